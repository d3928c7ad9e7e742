import type { BuyersFile } from "../../../addin/publish/buyersFile.ts";
import { wordsOf } from "../../../addin/publish/words/wordsOf.ts";
import { answerPart } from "./answerPart.ts";
import { chartTools } from "./chartTools.ts";

// What a published page runs in the browser of a buyer: the chart can be searched and sorted, and the page answers for
// figures. It has no way to send anything, and keeps nothing.

const data = document.getElementById("data");
chartTools(wordsOf(document.documentElement.lang === "de" ? "German" : "English"));
// The file was written together with this script.
if (data) answerPart(JSON.parse(data.textContent) as BuyersFile);
