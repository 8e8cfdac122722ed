import {
  ASKED_PER,
  CostingError,
  type Currency,
  type DateOrder,
  type DecimalSign,
  type ListQuestions,
  type ListSettings,
  parseCurrency,
  readListDate,
  readListFigure,
} from "../../src/index";
import { element } from "../controls/element";
import { type Choice, type Field, field } from "../controls/field";
import { dateSerial } from "../excel/template/fields";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { decimalMark, withLocalMark, withPoint } from "../wording/decimalmark";
import { showCellDate, today } from "../wording/display";
import { locale } from "../wording/language";

const { list: texts, check } = ASKING_TEXTS;

export interface ListQuestionForm {
  readonly root: HTMLElement;
  /** Shows what is asked; answers that were given stay. */
  ask(questions: ListQuestions, own: Currency): void;
  /** What was answered; undefined where the currency for all is none. @param own the workbook's currency */
  settings(own: Currency): ListSettings | undefined;
}

/** What a list leaves open. Nothing is answered for the person but what a glance can put right: piece, currency, today. */
export function listQuestions(changed: () => void): ListQuestionForm {
  const choice = (id: string, choices: readonly Choice[] = []) => field({ id: `list-${id}`, label: "", choices });
  const fields = {
    decimal: choice("decimal"),
    order: choice("order"),
    ounce: choice("ounce", [
      { value: "", shown: texts.choose },
      { value: "ozt", shown: texts.troy },
      { value: "oz av", shown: texts.avoirdupois },
    ]),
    gr: choice("gr", [
      { value: "", shown: texts.choose },
      { value: "g", shown: texts.gram },
      { value: "grain", shown: texts.grain },
    ]),
    per: field({
      id: "list-per",
      label: texts.per,
      choices: ASKED_PER.map((value) => ({ value, shown: check.per[value] })),
    }),
    currency: field({ id: "list-currency", label: texts.currency }),
    date: field({ id: "list-date", label: texts.date, start: today() }),
    source: field({ id: "list-source", label: texts.source }),
  };
  const exchanges = new Map<Currency, Field>();
  fields.date.control.setAttribute("type", "date");
  for (const each of Object.values(fields)) each.root.classList.add("half");
  // A date as the browser writes it needs the width.
  for (const each of [fields.date, fields.source]) each.root.classList.replace("half", "whole");
  const grid = element("div", { class: "fields" }, ...Object.values(fields).map((each) => each.root));
  const root = element("fieldset", {}, element("legend", {}, texts.questions), grid);
  root.addEventListener("input", changed);
  root.hidden = true;

  function relabel(asked: Field, id: string, label: string | undefined): void {
    asked.root.hidden = label === undefined;
    const shown = asked.root.querySelector<HTMLLabelElement>(`label[for="list-${id}"]`);
    if (shown && label !== undefined) shown.textContent = label;
  }

  function askAbroad(currencies: readonly Currency[], own: Currency): void {
    for (const currency of currencies) {
      if (exchanges.has(currency)) continue;
      const asked = field({
        id: `list-exchange-${currency}`,
        label: texts.exchange(currency, own),
        numeric: true,
        required: true,
        help: texts.exchangeHelp,
      });
      asked.root.classList.add("half");
      exchanges.set(currency, asked);
      grid.append(asked.root);
    }
    for (const [currency, asked] of exchanges) asked.root.hidden = !currencies.includes(currency);
  }

  const answerIn = (asked: Field) => (asked.root.hidden ? "" : asked.control.value.trim());
  return {
    root,
    ask({ decimals, dates, ounce, gr, per, currency, currencies, date, source }, own) {
      relabel(fields.decimal, "decimal", decimals.doubtful && texts.decimals(decimals.doubtful));
      if (decimals.doubtful) fields.decimal.offer(decimalChoices(decimals.doubtful));
      relabel(fields.order, "order", dates.doubtful && texts.dates(dates.doubtful));
      if (dates.doubtful) fields.order.offer(dateChoices(dates.doubtful));
      relabel(fields.ounce, "ounce", ounce && texts.ounce(ounce));
      relabel(fields.gr, "gr", gr && texts.ounce(gr));
      fields.per.root.hidden = !per;
      fields.currency.root.hidden = !currency;
      if (fields.currency.control.value === "") fields.currency.fill(own);
      fields.date.root.hidden = !date;
      fields.source.root.hidden = !source;
      askAbroad(currencies, own);
      root.hidden = [...Object.values(fields), ...exchanges.values()].every((asked) => asked.root.hidden);
    },
    settings(own) {
      const currency = currencyOf(answerIn(fields.currency) || own, fields.currency);
      if (!currency) return undefined;
      return {
        own,
        today: today(),
        decimalSign: (answerIn(fields.decimal) || undefined) as DecimalSign | undefined,
        dateOrder: (answerIn(fields.order) || undefined) as DateOrder | undefined,
        ounce: (answerIn(fields.ounce) || undefined) as ListSettings["ounce"],
        gr: (answerIn(fields.gr) || undefined) as ListSettings["gr"],
        per: ASKED_PER.find((each) => each === answerIn(fields.per)) ?? "piece",
        currency,
        exchanges: Object.fromEntries(
          [...exchanges].map(([each, asked]) => [each, withPoint(answerIn(asked), "figure")]),
        ),
        date: answerIn(fields.date),
        source: answerIn(fields.source),
      };
    },
  };
}

function decimalChoices(doubtful: string): readonly Choice[] {
  const signs: readonly DecimalSign[] = decimalMark() === "," ? [",", "."] : [".", ","];
  const read = signs.map((sign) => {
    const figure = readListFigure(doubtful, sign);
    return { value: sign, shown: texts.decimalSigns[sign](figure && withLocalMark(figure, "figure")) };
  });
  return [{ value: "", shown: texts.choose }, ...read];
}

/** The order of the place first. */
function dateChoices(doubtful: string): readonly Choice[] {
  const orders: readonly DateOrder[] = isMonthFirst() ? ["month first", "day first"] : ["day first", "month first"];
  const read = orders.flatMap((order) => {
    const iso = readListDate(doubtful, order);
    return iso ? [{ value: order, shown: showCellDate(dateSerial(iso)) }] : [];
  });
  return [{ value: "", shown: texts.choose }, ...read];
}

function isMonthFirst(): boolean {
  const parts = new Intl.DateTimeFormat(locale()).formatToParts().map(({ type }) => type);
  return parts.indexOf("month") < parts.indexOf("day");
}

function currencyOf(text: string, asked: Field): Currency | undefined {
  try {
    asked.setFault("");
    return parseCurrency(text, texts.currency);
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    asked.setFault(error.message);
    return undefined;
  }
}
