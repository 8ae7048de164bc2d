#include "quell/app/measured.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "quell/app/check_texts.h"
#include "quell/app/method_index.h"
#include "quell/app/validation_text.h"
#include "quell/base/source.h"

namespace quell::app {
namespace {

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> parts;
  while (true) {
    const auto end = text.find(at);
    parts.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

std::size_t place_of(const std::vector<std::string_view>& names, std::string_view name) {
  return static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
}

/// Reads the points of a set whose card is known.
class PointReader {
 public:
  PointReader(MeasuredSet& set, std::string_view scale) : set_(set), scale_(scale) {}

  void read(std::string_view text) {
    if (!text.empty() && text.back() == '\n') text.remove_suffix(1);
    const auto lines = split(text, '\n');
    columns_ = split(lines.front(), ',');
    if (!fits()) return;
    for (std::size_t i = 1; i < lines.size(); ++i) row(i + 1, split(lines[i], ','));
    if (set_.points.empty()) set_.faults.emplace_back("no points");
  }

 private:
  MeasuredSet& set_;
  std::string_view scale_;
  const Method* method_ = nullptr;
  std::size_t output_ = 0;
  std::vector<std::string_view> columns_;

  bool fault(std::string text) {
    set_.faults.push_back(std::move(text));
    return false;
  }

  bool has_column(std::string_view name) const { return place_of(columns_, name) < columns_.size(); }

  bool fits() {
    method_ = find_method(set_.method);
    if (method_ == nullptr) return fault(fmt::format("there is no method '{}'", set_.method));
    while (output_ < method_->outputs.size() && method_->outputs[output_].name.view() != set_.symbol) ++output_;
    if (output_ == method_->outputs.size()) return fault(fmt::format("'{}' is no output of {}", set_.symbol, set_.method));
    for (const Symbol& symbol : method_->inputs)
      if (!has_column(symbol.name.view())) return fault(fmt::format("no column '{}'", symbol.name.view()));
    for (const std::string_view name : {std::string_view(set_.symbol), scale_, std::string_view("known")})
      if (!has_column(name)) return fault(fmt::format("no column '{}'", name));
    return true;
  }

  void row(std::size_t line, const std::vector<std::string_view>& cells) {
    const auto wrong = [&](std::string_view what) { fault(fmt::format("line {}: {}", line, what)); };
    if (cells.size() != columns_.size()) return wrong("not as many values as columns");
    const auto number = [&](std::string_view column) {
      const auto read = read_book_number(cells[place_of(columns_, column)], dimension::none);
      return read ? read->value : std::numeric_limits<double>::quiet_NaN();
    };
    const auto known = cells[place_of(columns_, "known")];
    if (known != "seen" && known != "memory") return wrong("known is none of seen, memory");
    std::vector<double> inputs;
    for (const Symbol& symbol : method_->inputs) inputs.push_back(number(symbol.name.view()));
    MeasuredPoint point{.measured = number(set_.symbol), .scale = number(scale_), .seen = known == "seen"};
    if (!(point.measured > 0.0) || !(point.scale > 0.0)) return wrong("measured value and scale must be numbers above zero");
    std::vector<double> outputs(method_->outputs.size(), 0.0);
    if (const auto done = method_->answer(inputs, outputs); !done) return wrong(done.error().reason);
    point.ours = outputs[output_];
    if (!(point.ours > 0.0)) return wrong("our value is not above zero: there is no ratio to it");
    set_.points.push_back(point);
  }
};

}  // namespace

double MeasuredSet::bias() const {
  double sum = 0.0;
  for (const auto& point : points) sum += point.ratio();
  return points.empty() ? 0.0 : sum / static_cast<double>(points.size());
}

double MeasuredSet::spread() const {
  if (points.size() < 2) return 0.0;
  const double mean = bias();
  double sum = 0.0;
  for (const auto& point : points) sum += (point.ratio() - mean) * (point.ratio() - mean);
  return std::sqrt(sum / static_cast<double>(points.size() - 1));
}

double MeasuredSet::lowest() const {
  double least = points.empty() ? 0.0 : points.front().ratio();
  for (const auto& point : points) least = std::min(least, point.ratio());
  return least;
}

double MeasuredSet::highest() const {
  double largest = 0.0;
  for (const auto& point : points) largest = std::max(largest, point.ratio());
  return largest;
}

MeasuredSet read_measured(std::string_view name, std::string_view card, std::string_view points) {
  MeasuredSet set;
  set.name = name;
  try {
    const toml::table table = toml::parse(card, name);
    const auto text = [&](std::string_view key) {
      const auto value = table[key].value<std::string>();
      if (!value || value->empty()) set.faults.push_back(fmt::format("the card has no '{}'", key));
      return value.value_or("");
    };
    const std::string key = text("source");
    if (find_source(key) == nullptr) set.faults.push_back(fmt::format("source '{}' is not in sources.bib", key));
    set.source = short_citation(key);
    set.title = text("title");
    set.place = text("place");
    set.method = text("method");
    set.symbol = text("measured");
    set.figure = text("figure");
    set.remarks = text("remarks");
    const std::string scale = text("scale");
    if (set.faults.empty()) PointReader(set, scale).read(points);
  } catch (const toml::parse_error& error) {
    set.faults.push_back(fmt::format("card, line {}: {}", error.source().begin.line, error.description()));
  }
  return set;
}

std::vector<MeasuredSet> measured_sets(std::string_view pattern) {
  std::vector<MeasuredSet> sets;
  for (const MeasuredText& text : measured_texts()) {
    MeasuredSet set = read_measured(text.name, text.card, text.points);
    const auto holds = [&](std::string_view where) { return where.find(pattern) != std::string_view::npos; };
    if (holds(set.name) || holds(set.source) || holds(set.method)) sets.push_back(std::move(set));
  }
  std::sort(sets.begin(), sets.end(),
            [](const MeasuredSet& a, const MeasuredSet& b) { return std::tie(a.method, a.name) < std::tie(b.method, b.name); });
  return sets;
}

std::vector<output::ScatterPanel> scatter_panels(const std::vector<MeasuredSet>& sets) {
  std::vector<output::ScatterPanel> panels;
  for (const MeasuredSet& set : sets) {
    auto panel =
        std::find_if(panels.begin(), panels.end(), [&](const output::ScatterPanel& p) { return p.title == set.figure; });
    if (panel == panels.end()) panel = panels.insert(panels.end(), {set.figure, {}});
    output::ScatterSeries series{.name = set.source, .bias = set.bias(), .spread = set.spread(), .points = {}};
    for (const auto& p : set.points) series.points.push_back({p.ours / p.scale, p.measured / p.scale, !p.seen});
    panel->series.push_back(std::move(series));
  }
  return panels;
}

}  // namespace quell::app
