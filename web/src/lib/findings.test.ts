import { expect, it } from "vitest";
import { workingOf } from "./findings";

it("leads what is said of river, model and operation to safety, and what judges data and limits to the checks", () => {
  for (const id of ["river.scour", "river.filter", "model.advised", "operation.forbidden"]) expect(workingOf(id), id).toBe(6);
  for (const id of ["river.rating_range", "river.profile_start", "model.required", "gates.unequal"]) expect(workingOf(id), id).toBe(5);
});
