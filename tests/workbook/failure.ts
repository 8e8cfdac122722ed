/** A failure as Excel answers it: a code and a sentence. `location` is filled in by the interpreter where it is missing. */
export class Failure extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly status = 400,
    readonly location?: string,
  ) {
    super(message);
  }
}

export const notFound = () => new Failure("ItemNotFound", "The requested resource doesn't exist.", 404);
export const alreadyExists = () =>
  new Failure("ItemAlreadyExists", "A resource with the same name or identifier already exists.");
export const invalid = (
  message = "The argument is invalid or missing or has an incorrect format.",
  location?: string,
) => new Failure("InvalidArgument", message, 400, location);
export const wrongSize = (location: string) =>
  invalid(
    "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
    location,
  );
export const denied = () => new Failure("AccessDenied", "You cannot perform the requested operation.", 403);
/** For what this stand-in does not implement, so that it is never ignored silently. */
export const gap = (member: string) =>
  new Failure("ApiNotFound", `The workbook page does not know ${member}`, 400, member);
