#include "quell/output/report/safety_tables.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <functional>

#include "quell/output/report/chapters.h"

namespace quell::output {
namespace {

std::string band(const hydraulics::SizeBand& sizes, const Printer& p) {
  return p.grain(sizes.least) + " – " + p.grain(sizes.most);
}

void write_layer_table(Html& html, const std::vector<checks::FilterLayer>& layers, std::string_view caption, const Printer& p) {
  html.open_table("",
                  {{"Layer, from below", ""},
                   {"D15", "n"},
                   {"D50", "n"},
                   {"D85", "n"},
                   {with_head("Thickness", p.length_unit()), "n"},
                   {with_head("Volume", p.volume_unit()), "n"}},
                  caption);
  int number = 0;
  for (const auto& layer : layers)
    html.row({std::to_string(++number), band(layer.band.D15, p), band(layer.band.D50, p), band(layer.band.D85, p),
              p.level(layer.thickness), layer.volume > 0.0 ? p.volume(layer.volume) : std::string("–")});
  html.close_table();
}

void write_filter(Html& html, const checks::StoneLayers& layers, const Printer& p) {
  if (!layers.bed_known)
    return html.element(
        "p", "Filter: not designed, for the grain of the bed is not given. Without one the bed washes out through the stone.");
  html.element(
      "p",
      fmt::format("Bed below: d15 {}, d50 {}, d85 {}{}. D15 of the stone is {} times d85 of the bed; above 5 the bed "
                  "is drawn through.",
                  p.grain(layers.bed.d15), p.grain(layers.bed.d50), p.grain(layers.bed.d85),
                  layers.bed_derived ? ", partly derived from its mean and coarse sizes" : "", p.ratio(layers.stone_on_bed)));
  if (!layers.filter.empty())
    write_layer_table(html, layers.filter, "Filter between bed and stone, by the ratios of D15, D50 and d85 of neighbours", p);
  else
    html.element("p", layers.closes ? "The stone holds this bed without a filter."
                                    : "No granular layer both holds and drains this bed: use a geotextile.");
  if (const double room =
          layers.filter.empty() ? 2.0 : layers.filter.front().band.D15.most / layers.filter.front().band.D15.least;
      room < 1.5)
    html.element("p",
                 fmt::format("The rules leave only a factor of {} between the limits of a layer, which is hard to deliver.",
                             p.ratio(room)));
  html.element(
      "p",
      "Layers hold no more than 5 % of fines. Their thickness, placed under water, is a rule of practice. A geotextile "
      "with a protection layer may stand in for them; no rule for its opening could be read.");
}

/// Low, expected and high; or the one level of the run.
std::string three(const std::array<double, 3>& values, bool one, const std::function<std::string(double)>& print) {
  std::string text = print(values[0]);
  for (std::size_t i = 1; i < values.size() && !one; ++i) text += "<br/>" + print(values[i]);
  return text;
}

void write_ranges(Html& html, const checks::ModelAdvice& model, const Printer& p) {
  const auto& ranges = model.ranges;
  html.open_table("dense", {{"Instruments must span, in the model", ""}, {"From", "n"}, {"To", "n"}, {"Note", "q"}},
                  "Ranges, with a quarter to spare");
  const auto quantity = [&](double value, Dimension dimension) { return p.quantity(value, dimension, 3); };
  if (ranges.frequency > 0.0)
    html.row(
        {"Pressure on the floor, gauge", quantity(ranges.least_pressure, dimension::pressure),
         quantity(ranges.largest_pressure, dimension::pressure),
         fmt::format("flush transducers, read at {:.0f} Hz and more, several to a panel; the envelope of the slab's pressure "
                     "range sets the span, and extremes need long records",
                     ranges.frequency)});
  html.row({"Discharge", quantity(ranges.least_discharge, dimension::discharge),
            quantity(ranges.largest_discharge, dimension::discharge), "calibrated meter, 0.5 to 1 %"});
  html.row(
      {"Depth above the floor", quantity(0.0, dimension::length), quantity(ranges.deepest, dimension::length), "point gauges"});
  html.row({"Velocity", quantity(0.0, dimension::velocity), quantity(ranges.fastest, dimension::velocity),
            "acoustic probe or particle images"});
  html.close_table();
}

}  // namespace

void write_stone_layers(Html& html, const checks::StoneLayers& layers, const Printer& p) {
  html.open_table("", {{"Stone as delivered", ""}, {"Lower – upper limit", "n"}, {"Mass of a sphere", "n"}},
                  "Gradation of the stone");
  const auto row = [&](std::string_view name, const hydraulics::SizeBand& sizes, const hydraulics::SizeBand& mass) {
    html.row({std::string(name), band(sizes, p),
              p.quantity(mass.least, dimension::mass, 3) + " – " + p.quantity(mass.most, dimension::mass, 3)});
  };
  row("D15, 15 % finer", layers.stone.D15, layers.mass[0]);
  row("D50", layers.stone.D50, layers.mass[1]);
  row("D85", layers.stone.D85, layers.mass[2]);
  row("D100, largest", layers.largest, layers.mass[3]);
  html.close_table();
  write_filter(html, layers, p);
  if (layers.launch_volume > 0.0)
    html.element("p",
                 fmt::format("Instead of a cutoff below the scour, the last {} of the stone laid {} thick ({} {} of width) "
                             "settle on 1V:2H while the bed sinks by {}, which is a day of the governing flow.",
                             p.with_unit(p.level(layers.launch_length), p.length_unit()),
                             p.with_unit(p.level(layers.launch_thickness), p.length_unit()),
                             p.number(layers.launch_volume, dimension::area, 3),
                             p.units() == UnitSystem::si ? "m³ per metre" : "ft³ per foot",
                             p.with_unit(p.level(layers.launch_scour), p.length_unit())));
}

void write_uplift_points(Html& html, const checks::Safety& safety, const Printer& p) {
  const auto& seepage = safety.seepage;
  if (seepage.points.empty()) return;
  html.open_table("dense",
                  {{"Point", ""},
                   {with_head("From upstream", p.length_unit()), "n"},
                   {"Alone", "n"},
                   {"Thickness", "n"},
                   {"Neighbour", "n"},
                   {"Slope", "n"},
                   {"Khosla", "n"},
                   {"Lane", "n"},
                   {"Bligh", "n"},
                   {with_head("Head, largest", p.length_unit()), "n"}},
                  "Share of the head left below the floor: Khosla's key points with their corrections, beside creep");
  const auto share = [](double value) { return fmt::format("{:.3f}", value); };
  for (const auto& point : seepage.points) {
    const bool is_toe = point.point == ' ';
    const std::string name = is_toe ? std::string("toe of the basin") : fmt::format("{}, {} cutoff", point.point, point.cutoff);
    const auto part = [&](double value) { return is_toe ? std::string("–") : share(value); };
    html.row({name, p.level(point.distance), part(point.alone), part(point.thickness), part(point.interference),
              part(point.slope), share(point.khosla), share(point.lane), share(point.bligh),
              p.level(seepage.no_flow_head * point.largest())});
  }
  html.close_table();
  html.element(
      "p", fmt::format("E lies before a cutoff, D at its tip, C behind it. Reservoir full and no flow, {} between the pools: "
                       "the largest of the three below the toe asks for {} of slab by weight alone with the drains failed, "
                       "{} with them working. The corrections are recalled, not read again.",
                       p.with_unit(p.level(seepage.no_flow_head), p.length_unit()),
                       p.with_unit(p.level(seepage.toe_thickness), p.length_unit()),
                       p.with_unit(p.level(seepage.toe_thickness_drained), p.length_unit())));
  if (safety.layers.drain_known)
    write_layer_table(html, safety.layers.drain, "Filter of the underdrains, from the soil to the pipe", p);
}

void write_model_runs(Html& html, const checks::ModelAdvice& model, const Printer& p) {
  if (model.runs.empty()) return;
  html.open_table("dense",
                  {{"Run", ""},
                   {with_head("Discharge", p.discharge_unit()), "n"},
                   {"In the model", "n"},
                   {with_head("Tailwater: low, expected, high", p.length_unit()), "n"},
                   {with_head("Its depth in the model", p.length_unit()), "n"},
                   {with_head("y1 in the model", p.length_unit()), "n"},
                   {with_head("V1 in the model", p.velocity_unit()), "n"},
                   {"F1", "n"},
                   {"Reynolds", "n"},
                   {"Root of Weber", "n"}},
                  "Programme of runs");
  for (const auto& run : model.runs)
    html.row(
        {escape_xml(p.words(run.name)), p.discharge(run.discharge), p.quantity(run.model_discharge, dimension::discharge, 3),
         three(run.tailwater_level, run.one_tailwater, [&](double level) { return p.level(level); }),
         three(run.model_depth, run.one_tailwater, [&](double depth) { return p.size(depth); }), p.size(run.model_y1),
         p.velocity(run.model_V1), p.ratio(run.model_F1), round_number(run.reynolds), fmt::format("{:.0f}", run.weber_root)});
  html.close_table();
  html.open_table("dense", {{"Run", ""}, {"Measure", ""}, {"What the scale distorts", "q"}}, "What each run is for");
  for (const auto& run : model.runs)
    html.row({escape_xml(p.words(run.name)), std::string(run.measure), escape_xml(run.effects)});
  html.close_table();
  write_ranges(html, model, p);
}

std::string round_number(double value) {
  if (!(value >= 10.0)) return fmt::format("{:.1f}", value);
  const double unit = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
  std::string text = fmt::format("{:.0f}", unit * std::round(value / unit));
  for (std::size_t i = text.size(); i > 3; i -= 3) text.insert(i - 3, "\u202f");
  return text;
}

}  // namespace quell::output
