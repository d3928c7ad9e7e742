import { addIn } from "../addIn.ts";
import { commands } from "../commands.ts";
import { escapeHtml, pageFrame } from "./pageFrame.ts";

/**
 * The pages to read beside the help of the functions: how to add Measure Book to Excel, privacy and terms.
 *
 * @param home https address of the folder that the built files are served from
 */
export function readingPages(home: string): Readonly<Record<string, string>> {
  return {
    "add-to-excel.html": addToExcelPage(home),
    "privacy.html": privacyPage(),
    "terms.html": termsPage(),
  };
}

/** `<ol>` of steps; texts are HTML. */
function steps(list: readonly string[]): string {
  return `<ol>\n${list.map((step) => `<li>${step}</li>`).join("\n")}\n</ol>`;
}

/** The ways in, as Microsoft’s pages on sideloading, shared folders and integrated apps describe them. */
function addToExcelPage(home: string): string {
  const manifest = escapeHtml(new URL("manifest.xml", home).href);
  const labels = commands.map(({ label }) => label);
  const isHere = new URL(home).hostname === "localhost";
  const body = [
    `<p class="lead">Measure Book joins Excel by one small file, <a href="manifest.xml" download="measure-book.xml">measure-book.xml</a>. Save it first: choose the link, or right-click it and choose “Save link as”. It tells Excel to fetch Measure Book from ${manifest.replace(/manifest\.xml$/, "")}, nothing more.</p>`,
    ...(isHere
      ? [
          "<p><strong>This copy runs on this computer alone.</strong> It works in Excel only while the window in which <code>npm run excel</code> was typed stays open.</p>",
        ]
      : []),
    "<p>Then choose where you use Excel:</p>",
    '<ul><li><a href="#web">Excel in a browser</a> – the quickest, for you alone</li><li><a href="#mac">Excel on a Mac</a></li><li><a href="#windows">Excel on Windows</a></li><li><a href="#everyone">For everyone in a firm or school</a></li></ul>',
    '<h2 id="web">Excel in a browser</h2>',
    steps([
      'Go to <a href="https://www.office.com/">office.com</a>, sign in (a free account will do) and open a workbook in Excel.',
      "Choose <b>Home</b>, then <b>Add-ins</b>, then <b>More Settings</b> at the foot of the list. Some Excels call it <b>More Add-ins</b>.",
      "Choose <b>Upload My Add-in</b>, then <b>Browse</b>, pick <code>measure-book.xml</code>, and choose <b>Upload</b>.",
    ]),
    "<p>Your browser remembers it. After clearing the browser’s data, or in another browser, upload it again.</p>",
    '<h2 id="mac">Excel on a Mac</h2>',
    steps([
      "Close Excel. In the Finder press <kbd>Shift</kbd>+<kbd>Cmd</kbd>+<kbd>G</kbd>.",
      "Paste <code>~/Library/Containers/com.microsoft.Excel/Data/Documents</code> and press Return.",
      "Make a folder named <code>wef</code> there, if there is none, and put <code>measure-book.xml</code> into it.",
      "Open Excel and a workbook. Choose <b>Home</b>, then <b>Add-ins</b>, then <b>Measure Book</b>.",
    ]),
    '<h2 id="windows">Excel on Windows</h2>',
    '<p>Easiest is to upload it <a href="#web">in the browser</a>. To have it in Excel on Windows itself, it is put into a shared folder that Excel trusts. Microsoft means this way for trying an add-in out; for a whole firm take the next one.</p>',
    steps([
      "Make a folder, for example <code>Add-ins</code> in Documents, and put <code>measure-book.xml</code> into it.",
      "Right-click the folder, choose <b>Properties</b>, then the tab <b>Sharing</b>, then <b>Share</b>. Add yourself, choose <b>Share</b>, and note the network path that is shown, such as <code>\\\\MY-PC\\Add-ins</code>.",
      "In Excel choose <b>File</b>, <b>Options</b>, <b>Trust Center</b>, <b>Trust Center Settings</b>, <b>Trusted Add-in Catalogs</b>.",
      "Type the network path into <b>Catalog Url</b>, choose <b>Add catalog</b>, tick <b>Show in Menu</b>, then <b>OK</b> twice. Close Excel and open it again.",
      "Choose <b>Home</b>, then <b>Add-ins</b>, then <b>Advanced</b> or <b>More Add-ins</b>, the tab <b>Shared Folder</b>, and <b>Measure Book</b>, then <b>Add</b>.",
    ]),
    '<h2 id="everyone">For everyone in a firm or school</h2>',
    "<p>Whoever looks after Microsoft 365 there does this once:</p>",
    steps([
      'Sign in to the <a href="https://admin.microsoft.com/">Microsoft 365 admin centre</a>.',
      "Choose <b>Settings</b>, then <b>Integrated apps</b>, then <b>Upload custom apps</b>.",
      `Choose <b>Office Add-in</b>, and either upload <code>measure-book.xml</code> or give its address: <code>${manifest}</code>.`,
      "Choose who gets it, and finish. It can take a day until it is on every ribbon.",
    ]),
    "<h2>What you should see now</h2>",
    `<p>On the tab <b>Home</b> a group <b>${escapeHtml(addIn.groupLabel)}</b> with ${labels
      .slice(0, -1)
      .map((label) => `<b>${escapeHtml(label)}</b>`)
      .join(
        ", ",
      )}. Right-click a cell to find <b>${escapeHtml(labels.at(-1) ?? "")}</b>. Type <code>=FIT.</code> in a cell to see the functions.</p>`,
    "<p>Choose <b>New measurement chart</b> to begin with empty sheets, or <b>Measure Book</b> and <b>Import</b> to bring a chart that you have.</p>",
    "<h2>If it does not work</h2>",
    '<ul><li><b>There is no Add-ins button or no way to upload:</b> your account does not let you. Ask whoever looks after Microsoft 365, or use Measure Book <a href="index.html">without Excel</a>.</li>',
    "<li><b>Cells show #NAME?:</b> Measure Book is not added to this Excel yet, or has not started. Choose <b>Measure Book</b> on the tab <b>Home</b>.</li>",
    "<li><b>Cells show #BUSY! for long:</b> open the pane once. On a Mac it then asks whether to start with the workbook: say yes.</li>",
    "<li><b>The pane says that Excel’s connection could not be loaded:</b> check the internet connection, then choose <b>Try again</b>.</li></ul>",
    "<h2>To remove it</h2>",
    "<p>In a browser and on Windows: <b>Home</b>, <b>Add-ins</b>, the three dots beside Measure Book, <b>Remove</b>. On a Mac take <code>measure-book.xml</code> out of the folder <code>wef</code>. Your workbooks keep their last results.</p>",
  ];
  return pageFrame({
    title: "Add Measure Book to Excel",
    description: "Step by step: Measure Book in Excel on the web, on Windows and on a Mac.",
    body: body.join("\n"),
  });
}

function privacyPage(): string {
  return pageFrame({
    title: "Privacy",
    description: "What Measure Book does with your data: it stays in your workbook.",
    body: [
      '<p class="lead">Your measurements stay in your workbook. Measure Book sends them nowhere.</p>',
      "<ul><li>All checks and sums are made on your computer, in Excel or in your browser.</li>",
      "<li>There is no account, no counting of visits, no advertising, and there are no cookies of ours.</li>",
      "<li>In Excel a few choices, such as the switch to start with the workbook, are kept in the workbook itself. Whoever gets the workbook gets them too.</li>",
      "<li>Without Excel the workbook is kept in your browser on your computer, until you delete it or clear the browser’s data.</li>",
      "<li>A drawing that you open in your browser travels in the address of the page, in the part behind the #, which browsers do not send. It does stand in your browser’s history.</li>",
      "<li>The files of Measure Book are fetched from the place where somebody put them. Like any web server, that one may note the address of your computer.</li>",
      "<li>Excel fetches Office.js from Microsoft; what Microsoft learns by that is said in Microsoft’s own privacy statement.</li></ul>",
    ].join("\n"),
  });
}

function termsPage(): string {
  return pageFrame({
    title: "Terms",
    description: "The terms of use of Measure Book: the MIT licence, and a caution.",
    body: [
      '<p class="lead">Measure Book is free and open: you may use, copy, change and pass it on under the MIT licence.</p>',
      "<p>It comes as it is, without warranty of any kind. Its answers are as good as the readings, tolerances and ease rules that it is given; make a trial garment before you cut into what is dear to you.</p>",
      "<p>Clothes for figures that children play with can hold small parts, cords and pins. Measure Book judges fit, not safety: follow the toy safety rules of the place where you sell, and ask someone qualified.</p>",
      "<p>Excel and Microsoft 365 are trade marks of Microsoft; Measure Book is not made or endorsed by Microsoft.</p>",
    ].join("\n"),
  });
}
