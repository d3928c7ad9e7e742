/**
 * Inverse of a symmetric positive definite matrix, in place, by Cholesky’s decomposition.
 *
 * @param a row by row, `size`² numbers, of which the lower triangle is read; holds the inverse afterwards
 * @returns false when the matrix is not positive definite
 */
export function invertInPlace(a: Float64Array, size: number): boolean {
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = a[i * size + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * size + k]! * a[j * size + k]!;
      if (i > j) a[i * size + j] = sum / a[j * size + j]!;
      else if (sum > 0) a[j * size + j] = Math.sqrt(sum);
      else return false;
    }
  }
  // The inverse of the triangle, in its place.
  for (let j = 0; j < size; j++) {
    a[j * size + j] = 1 / a[j * size + j]!;
    for (let i = j + 1; i < size; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= a[i * size + k]! * a[k * size + j]!;
      a[i * size + j] = sum / a[i * size + i]!;
    }
  }
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < size; k++) sum += a[k * size + i]! * a[k * size + j]!;
      a[i * size + j] = sum;
    }
  }
  for (let i = 0; i < size; i++) for (let j = i + 1; j < size; j++) a[i * size + j] = a[j * size + i]!;
  return true;
}
