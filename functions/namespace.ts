/** What stands before the name of every worksheet function: FIT.DELTA. */
export const namespace = "FIT";
