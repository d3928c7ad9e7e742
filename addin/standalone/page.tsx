import "./page/withoutEval.ts";
import { createRoot } from "react-dom/client";
import "./page/page.css";
import { StandalonePage } from "./page/StandalonePage.tsx";

const root = document.getElementById("root");
if (root) createRoot(root).render(<StandalonePage />);
