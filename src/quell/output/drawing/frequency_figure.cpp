// Yearly floods and the law fitted to them, over a return period drawn by Gumbel's variate.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quell/output/drawing/axes.h"
#include "quell/output/drawing/site_figures.h"

namespace quell::output {
namespace {

constexpr double left = 46.0;
constexpr double label_column = 104.0;
constexpr double plot_top = 18.0;
constexpr double plot_height = 250.0;

double variate(double period) {
  return -std::log(-std::log(1.0 - 1.0 / period));
}

/// World: variate and flow, or its logarithm.
struct Scale {
  bool logarithmic;
  double of(double flow) const { return logarithmic ? std::log10(std::max(flow, 1e-6)) : flow; }
};

Polyline curve(const site::FrequencyStudy& study, const std::vector<double>& flow, const Scale& scale) {
  Polyline line;
  for (std::size_t i = 0; i < study.period.size(); ++i) line.push_back({variate(study.period[i]), scale.of(flow[i])});
  return line;
}

void draw_periods(Canvas& canvas, const Frame& frame, const Mapping& map) {
  canvas.line({frame.left, frame.bottom()}, {frame.right(), frame.bottom()}, "f-axis");
  for (const double period : {1.25, 2.0, 5.0, 10.0, 25.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0}) {
    const double x = map({variate(period), map.world_y}).x;
    if (x < frame.left - 0.5 || x > frame.right() + 0.5) continue;
    canvas.line({x, frame.top}, {x, frame.bottom()}, "f-grid");
    canvas.line({x, frame.bottom()}, {x, frame.bottom() + 3.5}, "f-tick");
    canvas.text({x, frame.bottom() + 12.5}, fmt::format("{:g}", period), "f-small", Anchor::middle);
  }
}

/// 1, 2, 5 and their powers of ten in the printed unit.
void draw_log_flows(Canvas& canvas, const Frame& frame, const Mapping& map, UnitSystem units) {
  canvas.line({frame.left, frame.top}, {frame.left, frame.bottom()}, "f-axis");
  for (int power = -3; power < 8; ++power)
    for (const double digit : {1.0, 2.0, 5.0}) {
      const double printed = digit * std::pow(10.0, power);
      const double y = map({map.world_x, std::log10(from_unit(printed, dimension::discharge, units))}).y;
      if (y < frame.top - 0.5 || y > frame.bottom() + 0.5) continue;
      canvas.line({frame.left, y}, {frame.right(), y}, "f-grid");
      canvas.line({frame.left - 3.5, y}, {frame.left, y}, "f-tick");
      canvas.text({frame.left - 5.5, y + 3.1}, fmt::format("{:g}", printed), "f-small", Anchor::end);
    }
}

}  // namespace

std::string frequency_figure_svg(const site::ResolvedSite& resolved, UnitSystem units) {
  if (!resolved.study.has_frequency) return {};
  const auto& study = resolved.study.frequency;
  const Scale scale{study.law == site::FrequencyLaw::log_pearson_3};
  const Printer print(units);
  // Up to ten times the record, or the longest period that a flood was taken for.
  double longest = 10.0 * study.years;
  for (const auto& inflow : resolved.study.inflows) longest = std::max(longest, inflow.return_period);
  longest = std::min(longest * 1.2, study.period.back());
  const double first = variate(study.period.front());
  const double last = variate(longest);
  double low = scale.of(*std::min_element(study.plotted_flood.begin(), study.plotted_flood.end()));
  double high = low;
  for (std::size_t i = 0; i < study.period.size(); ++i)
    if (study.period[i] <= longest) high = std::max(high, scale.of(study.upper[i]));
  low = std::min(low, scale.of(study.quantile.front()));
  if (!scale.logarithmic) low = 0.0;
  const double room = 0.04 * (high - low);
  const Frame frame{left, plot_top, page_width - left - label_column, plot_height};
  const double base = scale.logarithmic ? low - room : low;
  const Mapping map{first, base, frame.left, frame.bottom(), frame.width / (last - first), frame.height / (high + room - base)};
  Canvas canvas;
  draw_periods(canvas, frame, map);
  if (scale.logarithmic)
    draw_log_flows(canvas, frame, map, units);
  else
    draw_left_axis(canvas, frame, map, {dimension::discharge, units}, 6, true);
  canvas.open_clip(frame);
  auto band = curve(study, study.upper, scale);
  auto lower = curve(study, study.lower, scale);
  const auto law = curve(study, study.quantile, scale);
  Polyline outline = band;
  outline.insert(outline.end(), lower.rbegin(), lower.rend());
  canvas.polygon(map(outline), "f-margin");
  canvas.polyline(map(band), "f-high");
  canvas.polyline(map(lower), "f-high");
  canvas.polyline(map(law), "f-available");
  const double reach = 2.0 * study.years;
  const double x_reach = map({variate(reach), 0.0}).x;
  canvas.line({x_reach, frame.top}, {x_reach, frame.bottom()}, "f-level");
  for (std::size_t i = 0; i < study.plotted_flood.size(); ++i) {
    const bool outlier =
        std::find(study.outliers.begin(), study.outliers.end(), study.plotted_flood[i]) != study.outliers.end();
    canvas.circle(map({variate(study.plotted_period[i]), scale.of(study.plotted_flood[i])}), 2.6,
                  outlier ? "f-point-2" : "f-point-4 f-point-open");
  }
  canvas.close_clip();
  if (x_reach < frame.right())
    canvas.text({x_reach + 4.0, frame.bottom() - 6.0}, "beyond twice the record: extrapolated", "f-quiet f-halo");
  std::vector<MarginLabel> labels;
  const auto at_end = [&](const std::vector<double>& flow) {
    std::size_t i = 0;
    while (i + 1 < study.period.size() && study.period[i + 1] <= longest) ++i;
    return map({0.0, scale.of(flow[i])}).y;
  };
  const std::string limits = fmt::format("{:.0f} % limits", 100.0 * study.confidence);
  labels.push_back({at_end(study.upper), limits, "f-quiet"});
  labels.push_back({at_end(study.quantile), scale.logarithmic ? "log-Pearson III" : "Gumbel", "f-strong"});
  labels.push_back({at_end(study.lower), limits, "f-quiet"});
  draw_margin_labels(canvas, labels, frame.right(), frame.top - 2.0, frame.bottom());
  canvas.text({frame.left, frame.bottom() + 27.0}, "return period, years", "f-quiet");
  canvas.text({frame.right(), frame.bottom() + 27.0},
              fmt::format("circles: {} yearly floods{}", study.years, study.outliers.empty() ? "" : ", filled: outliers"),
              "f-quiet", Anchor::end);
  canvas.text({frame.left - 34.0, frame.top + 0.5 * frame.height}, fmt::format("flow, {}", print.discharge_unit()), "f-quiet",
              Anchor::middle, -90.0);
  return canvas.svg(
      frame.bottom() + 32.0, "frequency", "Yearly floods and the law fitted to them",
      fmt::format("{} yearly floods over their return period with the fitted law and its confidence limits.", study.years));
}

}  // namespace quell::output
