import { mount } from "svelte";
import App from "./App.svelte";
import "./style.css";

// What stands there until now is the first thing to be seen while the script loads.
const target = document.getElementById("page")!;
target.replaceChildren();
mount(App, { target });
