// The long section on the page: the whole spillway, below it the basin alone at a larger scale, then the key.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quell/output/drawing/axes.h"
#include "quell/output/drawing/figures.h"
#include "quell/output/drawing/section_view.h"

namespace quell::output {

namespace {

constexpr double left_edge = 46.0;
constexpr double label_column = 118.0;
constexpr double both_views = 440.0;  // height, so that the figure leaves room for text on its page
constexpr double view_width = page_width - left_edge - label_column;

struct Sheet {
  Canvas canvas;
  const site::Site& site;
  const design::Option& option;
  const LongSection section;
  const Printer print;
};

std::string level_words(const Sheet& sheet, std::string_view name, double level) {
  return fmt::format("{}  {}", name, sheet.print.level(level));
}

std::string flow_words(const Sheet& sheet, double discharge) {
  return sheet.print.with_unit(sheet.print.discharge(discharge), sheet.print.discharge_unit());
}

void draw_frame(Sheet& sheet, const SectionView& view, std::string_view heading) {
  const AxisScale scale{dimension::length, sheet.print.units()};
  sheet.canvas.text({left_edge, view.frame.top - 10.0}, heading, "f-heading");
  sheet.canvas.text({view.frame.right(), view.frame.top - 10.0},
                    fmt::format("1 : {:g} at a width of {:g} mm", view.scale_number, text_width_mm), "f-quiet", Anchor::end);
  draw_bottom_axis(sheet.canvas, view.frame, view.map, scale, 9, false);
  draw_left_axis(sheet.canvas, view.frame, view.map, scale, std::max(3, static_cast<int>(view.frame.height / 34.0)), false);
  sheet.canvas.text({left_edge - 34.0, view.frame.top + 0.5 * view.frame.height},
                    fmt::format("level, {}", sheet.print.length_unit()), "f-quiet", Anchor::middle, -90.0);
  sheet.canvas.text({view.frame.right(), view.frame.bottom() + 24.0},
                    fmt::format("station from the crest, {}", sheet.print.length_unit()), "f-quiet", Anchor::end);
  draw_scale_bar(sheet.canvas, {left_edge + 4.0, view.frame.bottom() + 25.0}, view.map.scale_x, 110.0, sheet.print.units());
}

void add_tailwater_labels(const Sheet& sheet, const SectionView& view, std::vector<MarginLabel>& labels) {
  for (std::size_t i = 0; i < sheet.section.waters.size(); ++i) {
    const auto& profile = *sheet.section.waters[i].profile;
    labels.push_back({view.map({0.0, profile.tailwater_level}).y, level_words(sheet, "tailwater", profile.tailwater_level),
                      i == 0 ? "f-strong" : "f-text", true});
  }
}

void add_level(const Sheet& sheet, const SectionView& view, std::vector<MarginLabel>& labels, std::string_view name,
               double level) {
  if (level < view.bottom_level || level > view.top_level) return;
  labels.push_back({view.map({0.0, level}).y, level_words(sheet, name, level), "f-text", false});
}

/// Reservoir and crest levels stand above the water at the left, one line of text each.
void draw_reservoir_labels(Sheet& sheet, const SectionView& view) {
  const auto& waters = sheet.section.waters;
  double y = view.frame.top + 10.0;
  for (std::size_t i = 0; i < waters.size(); ++i, y += 11.5) {
    const double level = waters[i].profile->reservoir_level;
    const double x = left_edge + 10.0 + 11.0 * static_cast<double>(i);
    sheet.canvas.level_mark({x, view.map({0.0, level}).y}, i == 0 ? "f-mark-1" : "f-mark-2");
    sheet.canvas.text({left_edge + 6.0, y}, level_words(sheet, "reservoir, " + waters[i].label + ":", level),
                      i == 0 ? "f-strong f-halo" : "f-text f-halo");
  }
  sheet.canvas.text({left_edge + 6.0, y}, level_words(sheet, "crest:", sheet.site.crest.crest_level), "f-text f-halo");
}

SectionView draw_full(Sheet& sheet, double top) {
  const auto& section = sheet.section;
  double highest = sheet.site.crest.crest_level;
  for (const auto& water : section.waters) highest = std::max(highest, water.profile->reservoir_level);
  double lowest = std::min(section.apron_level - section.slab_thickness, sheet.site.river.bed_level);
  lowest = std::max(std::min(lowest, section.approach_floor), lowest - 0.5 * (highest - lowest));
  const ViewWish wish{section.first_station, section.last_station, lowest, highest, 50.0, 12.0};
  const auto view = fit_view(wish, {left_edge, top, view_width, 260.0});
  draw_section(sheet.canvas, view, section, sheet.site);
  draw_frame(sheet, view, "Long section");
  draw_reservoir_labels(sheet, view);
  std::vector<MarginLabel> labels;
  add_tailwater_labels(sheet, view, labels);
  add_level(sheet, view, labels, "river bed", sheet.site.river.bed_level);
  add_level(sheet, view, labels, "apron", section.apron_level);
  draw_margin_labels(sheet.canvas, labels, view.frame.right(), view.frame.top, view.frame.bottom() + 10.0);
  return view;
}

/// Names of the elements in a row under the slab, each led to its own.
void draw_element_names(Sheet& sheet, const SectionView& view, double y) {
  const auto& section = sheet.section;
  std::vector<double> wanted;
  double widest = 0.0;
  std::vector<std::string_view> names;
  for (const auto& element : section.elements) {
    if (element.name.empty()) continue;  // a further row of the one before it
    names.emplace_back(element.name);
    double sum = 0.0;
    for (const auto& p : element.outline) sum += p.x;
    wanted.push_back(view.map({sum / std::max<double>(1.0, static_cast<double>(element.outline.size())), 0.0}).x);
    widest = std::max(widest, text_width(element.name) + 10.0);
  }
  const auto placed = spread(wanted, widest, left_edge + 0.5 * widest, view.frame.right());
  const double base = view.map({0.0, section.apron_level}).y;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const Point leader[] = {{wanted[i], base}, {wanted[i], y - 16.0}, {placed[i], y - 10.0}};
    sheet.canvas.polyline(leader, "f-leader");
    sheet.canvas.text({placed[i], y}, names[i], "f-text f-halo", Anchor::middle);
  }
}

/// What stands at the downstream end.
std::string end_name(const design::Option& option) {
  const auto action = option.type->record().action;
  return action == dissipators::Action::roller || action == dissipators::Action::jet ? "lip" : "sill";
}

void draw_dimensions(Sheet& sheet, const SectionView& view) {
  const auto& section = sheet.section;
  const auto& option = sheet.option;
  const auto length = [&](double metres) {
    return sheet.print.with_unit(sheet.print.level(metres), sheet.print.length_unit());
  };
  const double below = view.map({0.0, section.apron_level - section.slab_thickness}).y;
  const Point toe = view.map({section.toe_station, section.apron_level}),
              end = view.map({section.basin_end, section.apron_level});
  draw_element_names(sheet, view, below + 24.0);
  const double y = below + 46.0;
  for (const double x : {toe.x, end.x}) sheet.canvas.line({x, below + 2.0}, {x, y + 4.0}, "f-leader");
  sheet.canvas.dimension_line({toe.x, y}, {end.x, y}, "basin length " + length(option.length));
  const double wall = section.toe_station + 0.45 * option.length;
  const double foot_level = option.type->record().action == dissipators::Action::blocks
                                ? section.apron_level + 0.55 * (section.floor.front().y - section.apron_level)
                                : section.apron_level;
  if (option.wall_height > 0.0)
    sheet.canvas.dimension_line(view.map({wall, foot_level}), view.map({wall, foot_level + option.wall_height}),
                                "wall " + length(option.wall_height));
  if (option.structure.end_sill_height <= 0.0) return;
  double sill = section.basin_end;
  for (const auto& element : section.elements)
    for (const auto& p : element.outline)
      if (p.x > section.toe_station + 0.6 * option.length) sill = std::min(sill, p.x);
  const Point foot = view.map({sill, section.apron_level}), tip = view.map({sill, option.end_sill_level});
  sheet.canvas.line(tip, {tip.x - 12.0, tip.y}, "f-leader");
  sheet.canvas.dimension_line({foot.x - 9.0, foot.y}, {tip.x - 9.0, tip.y},
                              end_name(option) + " " + length(option.structure.end_sill_height), Anchor::end);
}

SectionView draw_detail(Sheet& sheet, double top, double height) {
  const auto& section = sheet.section;
  const auto& option = sheet.option;
  double highest = option.wall_top_level;
  for (const auto& p : section.floor) highest = std::max(highest, p.y);
  for (const auto& water : section.waters) highest = std::max(highest, water.profile->tailwater_level);
  if (sheet.site.ground.has_level) highest = std::max(highest, std::min(sheet.site.ground.ground_level, highest + 2.0));
  double deep = section.apron_level - section.slab_thickness;
  for (const auto& p : section.floor) deep = std::min(deep, p.y - section.slab_thickness);
  const double rise = section.river_bed.size() > 1 ? section.river_bed[1].x - section.basin_end : 0.0;
  const double after = std::clamp(rise + 0.08 * option.length, 0.15 * option.length, 0.28 * option.length);
  const ViewWish wish{section.toe_station - 0.22 * option.length, section.basin_end + after, deep, highest, 24.0, 54.0};
  const auto view = fit_view(wish, {left_edge, top, view_width, height});
  draw_section(sheet.canvas, view, section, sheet.site);
  draw_frame(sheet, view, "Basin");
  draw_dimensions(sheet, view);
  std::vector<MarginLabel> labels;
  if (option.wall_height > 0.0) add_level(sheet, view, labels, "wall top", option.wall_top_level);
  add_tailwater_labels(sheet, view, labels);
  if (sheet.site.ground.has_level) add_level(sheet, view, labels, "ground beside", sheet.site.ground.ground_level);
  if (option.structure.end_sill_height > 0.0)
    add_level(sheet, view, labels, "top of the " + end_name(option), option.end_sill_level);
  add_level(sheet, view, labels, "river bed", sheet.site.river.bed_level);
  add_level(sheet, view, labels, "apron", section.apron_level);
  if (sheet.site.ground.has_foundation) add_level(sheet, view, labels, "foundation", sheet.site.ground.foundation_level);
  draw_margin_labels(sheet.canvas, labels, view.frame.right(), view.frame.top, view.frame.bottom());
  return view;
}

std::string water_words(const Sheet& sheet, const SectionWater& water) {
  const auto& result = water.profile->result;
  return fmt::format("{}, {}: y₁ {} {}, V₁ {} {}, F₁ {}, tailwater low", water.label,
                     flow_words(sheet, water.profile->discharge), sheet.print.depth(result.toe.y1), sheet.print.length_unit(),
                     sheet.print.velocity(result.toe.V1), sheet.print.velocity_unit(), sheet.print.ratio(result.toe.F1));
}

/// The key; returns the height where it ends.
double draw_key(Sheet& sheet, double top) {
  static constexpr std::string_view surfaces[] = {"f-water-1", "f-water-2"};
  static constexpr std::string_view energies[] = {"f-energy-1", "f-energy-2"};
  auto& canvas = sheet.canvas;
  double y = top;
  for (std::size_t i = 0; i < sheet.section.waters.size(); ++i, y += 14.0) {
    canvas.line({left_edge, y - 3.0}, {left_edge + 34.0, y - 3.0}, surfaces[i]);
    canvas.text({left_edge + 39.0, y}, "water", "f-text");
    canvas.line({left_edge + 72.0, y - 3.0}, {left_edge + 112.0, y - 3.0}, energies[i]);
    canvas.text({left_edge + 117.0, y}, "energy", "f-text");
    canvas.text({left_edge + 160.0, y}, water_words(sheet, sheet.section.waters[i]), i == 0 ? "f-strong" : "f-text");
  }
  canvas.line({left_edge, y - 3.0}, {left_edge + 34.0, y - 3.0}, "f-wall");
  canvas.text({left_edge + 39.0, y}, "top of the basin walls", "f-text");
  canvas.text({left_edge + 160.0, y},
              "Equal scales. Indicative: water over the crest, surface and energy line within the jump, body of the dam.",
              "f-quiet");
  return y + 6.0;
}

std::string description(const Sheet& sheet) {
  std::string text = fmt::format("Long section to equal scales. Apron at level {} {}, basin length {} {}.",
                                 sheet.print.level(sheet.option.apron_level), sheet.print.length_unit(),
                                 sheet.print.level(sheet.option.length), sheet.print.length_unit());
  for (const auto& water : sheet.section.waters) text += " " + water_words(sheet, water) + ".";
  return text;
}

}  // namespace

std::string long_section_svg(const site::Site& site, const design::DesignResult&, const design::Option& option,
                             UnitSystem units) {
  Sheet sheet{{}, site, option, long_section(site, option), Printer(units)};
  const auto full = draw_full(sheet, 18.0);
  const auto detail = draw_detail(sheet, full.frame.bottom() + 58.0, std::clamp(both_views - full.frame.height, 190.0, 300.0));
  const double end = draw_key(sheet, detail.frame.bottom() + 46.0);
  return sheet.canvas.svg(end, "long-section", "Long section with water surface and energy line", description(sheet));
}

}  // namespace quell::output
