export { lengthWords } from "../measures/lengthWords.ts";
