/** An error cell as Excel's documentation describes it, and as the class of its runtime that functions answer with. */
export const ERROR_CELLS = {
  "as data": (code: string) => ({ type: "Error", basicType: "Error", basicValue: code }),
  "as CustomFunctions.Error": (code: string) => Object.assign(new Error(""), { code }),
};
