/* Worksheet functions that show what the stand-in hands to them and does with what they give. */
// Looked up at the call: office.js defines CustomFunctions.Error only once the host's script has loaded.
const fault = (code, sentence) => new CustomFunctions.Error(CustomFunctions.ErrorCode[code], sentence);

CustomFunctions.associate("SEEN", (first, second, third) => JSON.stringify([first, second, third]));
CustomFunctions.associate("ONE", (value) => JSON.stringify(value));
CustomFunctions.associate("ALL", (values) => JSON.stringify(values));
CustomFunctions.associate("COUNT", (...values) => values.length);
CustomFunctions.associate("DOUBLED", (numbers) =>
  numbers.map((row) =>
    row.map((number) => (typeof number === "number" ? number * 2 : fault("invalidValue", `numbers: found ${number}`))),
  ),
);
CustomFunctions.associate("GIVE", (what) => {
  const given = { nan: Number.NaN, infinity: Number.POSITIVE_INFINITY, nothing: null, yes: true, text: "=1+1" };
  if (what === "plain") throw new TypeError("nobody sees this");
  if (what === "value") throw fault("invalidValue", "weight: found 0; a weight above zero is needed");
  if (what === "missing") throw fault("notAvailable", "mark: none is as low as that");
  if (what === "divide") throw fault("divisionByZero", "nobody sees this either");
  if (what === "returned") return fault("notAvailable", "returned, not thrown");
  if (what === "ragged") return [[1, 2], [3]];
  return given[what];
});
