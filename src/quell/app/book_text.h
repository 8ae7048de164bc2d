// How a row of the validation book is told: the difference in the source's unit, and the reason for a tolerance that is wider
// than what the source prints.
#pragma once

#include <string>
#include <vector>

#include "quell/app/measured.h"
#include "quell/app/validation.h"

namespace quell::app {

/// Ours less theirs, in the unit of the source, with two significant digits: "-0.0013 ft".
std::string difference_text(const CheckRow& row);

/// True where the tolerance is wider than half a unit of the last printed digit.
bool is_wider_than_print(const CheckRow& row);

/// docs/validation.md: counts, and every row of the book with ours, theirs, difference, tolerance, source and reason; then
/// the measured data with bias and spread.
std::string book_markdown(const std::vector<CheckedFile>& book, const std::vector<MeasuredSet>& sets);

}  // namespace quell::app
