/**
 * The rows of a CSV text; semicolons separate where the first line has them and no comma. Source: RFC 4180; semicolons are
 * common practice where the comma is the decimal sign.
 */
export function csvRows(text: string): readonly (readonly string[])[] {
  const [first = ""] = text.split(/\r?\n/, 1);
  const separator = first.includes(";") && !first.includes(",") ? ";" : ",";
  const rows: string[][] = [[]];
  let cell = "";
  let quoted = false;
  const source = text.replace(/^\uFEFF/, "");
  for (let at = 0; at < source.length; at += 1) {
    const sign = source[at] ?? "";
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (source[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (sign === '"' && cell === "") quoted = true;
    else if (sign === separator || sign === "\n") {
      rows.at(-1)?.push(cell);
      cell = "";
      if (sign === "\n") rows.push([]);
    } else if (sign !== "\r") cell += sign;
  }
  rows.at(-1)?.push(cell);
  return rows;
}
