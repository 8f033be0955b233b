/** A page of words alone. */
import { keepOffline } from "./offline.js";
import { start } from "./start.js";

start(() => {});
keepOffline();
