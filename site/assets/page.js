/** A page of words alone. */
import { start } from "./start.js";

start(() => {});
