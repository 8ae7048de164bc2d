// The fields of application: one row a type, one column a measure. In each cell the discharges of the site run as a path from
// the smallest (bottom) to the largest (top); the field in which the type may be used is shaded, its limits are lines.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quell/output/drawing/canvas.h"
#include "quell/output/drawing/figures.h"
#include "quell/output/format.h"

namespace quell::output {

namespace {

using dissipators::Limit;
using dissipators::Measure;

constexpr double name_width = 150.0;
constexpr double gap = 7.0;
constexpr double row_height = 30.0;
constexpr double row_step = 37.0;
constexpr double head_height = 40.0;
constexpr std::size_t column_count = 5;
constexpr double column_width = (page_width - name_width - column_count * gap) / column_count;

/// The measures drawn; the last column, tailwater over what is required, has no Measure of its own.
struct Column {
  std::string_view title;
  Measure measure;
  Dimension dimension;
  bool is_tailwater;
};
constexpr Column columns[column_count] = {{"Froude number", Measure::froude_number, dimension::none, false},
                                          {"unit discharge", Measure::unit_discharge, dimension::unit_discharge, false},
                                          {"velocity", Measure::velocity, dimension::velocity, false},
                                          {"head on the apron", Measure::head, dimension::length, false},
                                          {"tailwater / required", Measure::discharge, dimension::none, true}};

/// One discharge of a path: the value in the low tailwater case, and whether the limits of the column are kept there.
struct PathPoint {
  double value = 0.0;
  double share = 0.0;  ///< of the range of discharges, 0 to 1
  bool inside = true;
};

bool in_column(const Limit& limit, const Column& column) {
  if (column.is_tailwater) return false;
  return limit.measure == column.measure || (column.measure == Measure::head && limit.measure == Measure::fall);
}

bool keeps(const Limit& limit, double value) {
  return limit.sense == LimitSense::at_least ? value >= limit.limit : value <= limit.limit;
}

double value_in(const Column& column, const design::Option& option, const design::CaseResult& result, double crest_level) {
  const auto& limits = option.type->record().limits;
  if (column.is_tailwater) return result.required_depth > 0.0 ? result.available_depth / result.required_depth : 0.0;
  switch (column.measure) {
    case Measure::froude_number: return result.toe.F1;
    case Measure::unit_discharge: return result.toe.unit_discharge;
    case Measure::velocity: return result.toe.V1;
    default: break;
  }
  const bool by_fall =
      std::any_of(limits.begin(), limits.end(), [](const Limit& limit) { return limit.measure == Measure::fall; });
  return by_fall ? crest_level - option.apron_level : result.toe.reservoir_level - option.apron_level;
}

std::vector<PathPoint> path_of(const Column& column, const design::Option& option, double crest_level) {
  std::vector<PathPoint> path;
  if (option.cases.empty()) return path;
  const double least = option.cases.front().discharge;
  const double span = std::max(1e-9, option.cases.back().discharge - least);
  for (std::size_t i = 0; i < option.cases.size(); i += site::tailwater_cases.size()) {
    const auto& result = option.cases[i];
    const bool largest = i + site::tailwater_cases.size() >= option.cases.size();
    PathPoint point{value_in(column, option, result, crest_level), (result.discharge - least) / span, true};
    if (column.is_tailwater) {
      if (!(point.value > 0.0)) return {};
      point.inside = point.value >= 1.0 - 1e-6;
    }
    for (const auto& limit : option.type->record().limits)
      if (in_column(limit, column) && limit.otherwise == Status::fails && (!limit.largest_only || largest))
        point.inside = point.inside && keeps(limit, point.value);
    path.push_back(point);
  }
  return path;
}

/// The logarithmic range of a column over all types, with a little room.
struct Span {
  double low = 1e300, high = 0.0;
  void take(double value) {
    if (!(value > 0.0)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  }
  double place(double value) const {
    return (std::log(std::clamp(value, low, high)) - std::log(low)) / std::max(1e-9, std::log(high) - std::log(low));
  }
};

struct Figure {
  Canvas canvas{};
  const design::DesignResult& result;
  Printer print;
  double crest_level;
  std::array<Span, column_count> spans{};
};

Span span_of(const Figure& figure, const Column& column) {
  Span span;
  for (const auto& option : figure.result.options) {
    if (!option.sized) continue;
    for (const auto& point : path_of(column, option, figure.crest_level)) span.take(point.value);
    for (const auto& limit : option.type->record().limits)
      if (in_column(limit, column)) span.take(limit.limit);
  }
  if (column.is_tailwater) span.take(1.0);
  if (span.low > span.high) return {0.5, 2.0};
  const double room = std::pow(std::max(span.high / span.low, 1.2), 0.06);
  return {span.low / room, span.high * room};
}

Frame cell_frame(std::size_t column, double top) {
  return {name_width + static_cast<double>(column) * (column_width + gap), top, column_width, row_height};
}

void draw_head(Figure& figure) {
  for (std::size_t i = 0; i < column_count; ++i) {
    const Frame frame = cell_frame(i, head_height);
    const Column& column = columns[i];
    const Span& span = figure.spans[i];
    const std::string unit = unit_label(column.dimension, figure.print.units());
    figure.canvas.text({frame.left + frame.width / 2.0, 12.0}, std::string(column.title) + (unit.empty() ? "" : ", " + unit),
                       "f-strong", Anchor::middle);
    // Round values of a logarithmic scale: 1, 2, 5 times a power of ten.
    const double low = to_unit(span.low, column.dimension, figure.print.units());
    const double high = to_unit(span.high, column.dimension, figure.print.units());
    double last = -1e9;
    for (int power = -3; power < 5; ++power)
      for (const double step : {1.0, 1.5, 2.0, 3.0, 5.0, 7.0}) {
        const double value = step * std::pow(10.0, power);
        if (value < low || value > high) continue;
        const double x = frame.left + frame.width * span.place(from_unit(value, column.dimension, figure.print.units()));
        if (x - last < 19.0 || x > frame.right() - 4.0 || x < frame.left + 4.0) continue;
        last = x;
        figure.canvas.text({x, 26.0}, fmt::format("{:g}", value), "f-small", Anchor::middle);
        figure.canvas.line({x, 29.0}, {x, 33.0}, "f-tick");
      }
  }
}

/// Shaded from the limit that shuts the type out on one side to that on the other; limits asked of the largest discharge alone
/// bound the upper half of the cell.
void draw_field(Figure& figure, std::size_t index, const design::Option& option, const Frame& frame) {
  const Column& column = columns[index];
  const Span& span = figure.spans[index];
  const auto x_of = [&](double value) { return frame.left + frame.width * span.place(value); };
  const bool asks_tailwater = column.is_tailwater && option.type->record().level_rule == dissipators::LevelRule::tailwater;
  for (const bool upper : {true, false}) {
    double low = asks_tailwater ? x_of(1.0) : frame.left, high = frame.right();
    for (const auto& limit : option.type->record().limits) {
      if (!in_column(limit, column) || limit.otherwise != Status::fails || (limit.largest_only && !upper)) continue;
      if (limit.sense == LimitSense::at_least)
        low = std::max(low, x_of(limit.limit));
      else
        high = std::min(high, x_of(limit.limit));
    }
    const double half = 0.5 * frame.height;
    if (high > low) figure.canvas.rectangle({low, upper ? frame.top : frame.top + half, high - low, half}, "f-field");
  }
  for (const auto& limit : option.type->record().limits)
    if (in_column(limit, column)) {
      const double x = x_of(limit.limit);
      figure.canvas.line({x, limit.largest_only ? frame.top + 0.5 * frame.height : frame.bottom()}, {x, frame.top},
                         limit.otherwise == Status::fails ? "f-field-limit" : "f-field-caution");
    }
  if (asks_tailwater) figure.canvas.line({x_of(1.0), frame.bottom()}, {x_of(1.0), frame.top}, "f-field-limit");
}

/// A run of equal verdict is one line; where it changes, both runs meet.
void draw_path(Figure& figure, std::size_t index, const design::Option& option, const Frame& frame) {
  const auto path = path_of(columns[index], option, figure.crest_level);
  if (path.empty()) {
    figure.canvas.text({frame.left + frame.width / 2.0, frame.top + 0.62 * frame.height},
                       option.sized ? "asks for none" : "not sized", "f-quiet", Anchor::middle);
    return;
  }
  const auto at = [&](const PathPoint& point) {
    return Point{frame.left + frame.width * figure.spans[index].place(point.value),
                 frame.bottom() - 3.0 - (frame.height - 6.0) * point.share};
  };
  Polyline run{at(path.front())};
  for (std::size_t i = 1; i <= path.size(); ++i) {
    const bool ends = i == path.size() || path[i].inside != path[i - 1].inside;
    if (i < path.size() && (!ends || path[i - 1].inside)) run.push_back(at(path[i]));
    if (!ends) continue;
    figure.canvas.polyline(run, path[i - 1].inside ? "f-path-in" : "f-path-out");
    if (i < path.size()) run = path[i - 1].inside ? Polyline{at(path[i])} : Polyline{at(path[i - 1]), at(path[i])};
  }
  figure.canvas.circle(at(path.back()), 2.4, path.back().inside ? "f-path-end" : "f-path-end-out");
}

/// "fits", or the measures that shut it out, from the findings that fail.
std::string verdict(const design::Option& option) {
  if (!option.sized) return "not sized";
  const std::string prefix = std::string(option.type->record().id.view()) + ".";
  if (!option.type->record().withheld.empty()) return "screened, not sized";
  std::vector<std::string> reasons;
  for (const auto& finding : option.findings) {
    if (finding.status != Status::fails) continue;
    std::string reason = finding.id.rfind(prefix, 0) == 0 ? std::string() : std::string("tailwater");
    for (const auto& limit : option.type->record().limits)
      if (limit.id.view() == finding.id) reason = std::string(dissipators::name_of(limit.measure));
    if (reason.empty()) reason = finding.id.substr(prefix.size());
    std::replace(reason.begin(), reason.end(), '_', ' ');
    const bool proper = reason.rfind("Froude", 0) == 0;
    if (!reason.empty() && !proper && reason[0] >= 'A' && reason[0] <= 'Z')
      reason[0] = static_cast<char>(reason[0] - 'A' + 'a');
    if (const auto cut = reason.find(" at the toe"); cut != std::string::npos) reason.resize(cut);
    if (std::find(reasons.begin(), reasons.end(), reason) == reasons.end()) reasons.push_back(reason);
  }
  if (reasons.empty()) return "fits";
  std::string text = "out: " + reasons.front();
  if (reasons.size() > 1) text += fmt::format(", and {} more", reasons.size() - 1);
  return text;
}

void draw_row(Figure& figure, const design::Option& option, double top) {
  const std::string words = verdict(option);
  figure.canvas.text({0.0, top + 12.0}, option.type->record().name.view(), "f-strong");
  figure.canvas.text({0.0, top + 24.0}, words, words == "fits" ? "f-small" : "f-quiet");
  for (std::size_t i = 0; i < column_count; ++i) {
    const Frame frame = cell_frame(i, top);
    draw_field(figure, i, option, frame);
    figure.canvas.rectangle(frame, "f-cell");
    draw_path(figure, i, option, frame);
  }
}

double draw_key(Figure& figure, double top) {
  auto& canvas = figure.canvas;
  double x = name_width;
  const auto entry = [&](std::string_view words, auto mark) {
    mark(x);
    canvas.text({x + 27.0, top + 3.0}, words, "f-small");
    x += 38.0 + text_width(words, 8.6);
  };
  entry("may be used", [&](double at) { canvas.rectangle({at, top - 5.0, 22.0, 9.0}, "f-field"); });
  entry("limit", [&](double at) { canvas.line({at + 11.0, top - 6.0}, {at + 11.0, top + 5.0}, "f-field-limit"); });
  entry("caution beyond", [&](double at) { canvas.line({at + 11.0, top - 6.0}, {at + 11.0, top + 5.0}, "f-field-caution"); });
  entry("discharges inside", [&](double at) { canvas.line({at, top}, {at + 22.0, top}, "f-path-in"); });
  entry("outside", [&](double at) { canvas.line({at, top}, {at + 22.0, top}, "f-path-out"); });
  canvas.text(
      {name_width, top + 16.0},
      "Each path runs from the smallest discharge at the bottom of its cell to the largest at the top, marked by a dot. A "
      "limit in the upper half",
      "f-quiet");
  canvas.text({name_width, top + 26.0}, "of a cell is asked of the largest discharge alone. Scales are logarithmic.",
              "f-quiet");
  return top + 34.0;
}

}  // namespace

std::string fields_figure_svg(const site::Site& site, const design::DesignResult& result, UnitSystem units) {
  Figure figure{.result = result, .print = Printer(units), .crest_level = site.crest.crest_level};
  for (std::size_t i = 0; i < column_count; ++i) figure.spans[i] = span_of(figure, columns[i]);
  draw_head(figure);
  double top = head_height;
  std::string description = "Fields of application of each type and the discharges of the site in them.";
  for (const auto& option : result.options) {
    draw_row(figure, option, top);
    description += " " + std::string(option.type->record().name.view()) + ": " + verdict(option) + ".";
    top += row_step;
  }
  const double end = draw_key(figure, top + 8.0);
  return figure.canvas.svg(end, "fields", "Fields of application", description);
}

}  // namespace quell::output
