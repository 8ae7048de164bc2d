// Inputs, discharges, results by discharge.
#include <fmt/format.h>

#include <cmath>

#include "quell/output/report/chapters.h"

namespace quell::output {

namespace {

using site::index_of;
using site::TailwaterCase;

std::string head(std::string_view words, const std::string& unit) {
  std::string text(words);
  if (!unit.empty()) text += "<br/><span class=\"unit\">" + unit + "</span>";
  return text;
}

struct CaseRow {
  const design::CaseResult* by_case[3] = {nullptr, nullptr, nullptr};
};

std::vector<CaseRow> rows_by_discharge(const design::Option& option) {
  std::vector<CaseRow> rows;
  for (const auto& result : option.cases) {
    CaseRow* row = nullptr;
    for (auto& candidate : rows)
      for (const auto* known : candidate.by_case)
        if (known != nullptr && known->discharge == result.discharge) row = &candidate;
    if (row == nullptr) row = &rows.emplace_back();
    row->by_case[index_of(result.tailwater_case)] = &result;
  }
  return rows;
}

std::string origin_of(const ReportData& data, double discharge) {
  for (const auto& one : data.result.cases)
    if (one.discharge == discharge && one.origin != "range") return escape_xml(one.origin);
  return {};
}

std::string signed_percent(double share) {
  return fmt::format("{:+.1f} %", 100.0 * share);
}

/// Where the front stands in every tailwater case, and how far the low case is from losing it.
void write_jump_places(Html& html, const ReportData& data) {
  const auto& p = data.print;
  const std::string m = p.length_unit();
  html.element("h3", "Where the jump stands");
  html.element(
      "p",
      "Front of the jump from the toe of the basin, downstream positive; a negative station lies up the chute. On the chute by "
      "momentum with the pressure on the face, on the apron by friction; an h marks a front held by blocks or sill, as far "
      "down as "
      "the tests of the type allow. A jump counts as on the apron up to the tailwater that the tests of its type call best, "
      "although "
      "momentum lets its front climb the foot of the chute. Submergence is the tailwater above the sequent depth over the "
      "sequent depth. The last "
      "columns say how much tailwater and how much more discharge at the same tailwater the low case can lose or take "
      "before the jump leaves the basin.");
  html.open_table("dense", {{head("Discharge", p.discharge_unit()), "n"},
                            {head("Front, low", m), "n"},
                            {head("Front, expected", m), "n"},
                            {head("Front, high", m), "n"},
                            {"Submergence, low", "n"},
                            {"Submergence, high", "n"},
                            {head("Depth to sweep-out", m), "n"},
                            {head("Swept out at", p.discharge_unit()), "n"}});
  for (const auto& row : rows_by_discharge(*data.chosen)) {
    const auto* low = row.by_case[0];
    const auto* high = row.by_case[2];
    if (low == nullptr || high == nullptr) continue;
    const auto front = [&](const design::CaseResult* one) {
      if (one == nullptr) return std::string();
      if (one->jump == design::JumpPlace::past_sill) return std::string("swept out");
      return p.level(one->position.front) + (one->position.held ? " <i>h</i>" : "");
    };
    html.row({p.discharge(low->discharge, data.site.discharges.smallest), front(low), front(row.by_case[1]), front(high),
              signed_percent(low->submergence), signed_percent(high->submergence), p.level(low->sweep_out_reserve),
              low->sweep_out_discharge > 0.0 ? p.discharge(low->sweep_out_discharge, data.site.discharges.smallest)
                                             : "above the range"});
  }
  html.close_table();
}

/// Sections of the chute at the largest discharge of the profiles, about a dozen.
void write_chute(Html& html, const ReportData& data) {
  const design::WaterProfile* largest = nullptr;
  for (const auto& profile : data.chosen->profiles)
    if (!profile.chute.empty() && (largest == nullptr || profile.discharge > largest->discharge)) largest = &profile;
  if (largest == nullptr) return;
  const auto& p = data.print;
  const std::string m = p.length_unit();
  html.element("h3", "Along the chute");
  html.element(
      "p",
      "At " + p.discharge(largest->discharge, data.site.discharges.smallest) + " " + p.discharge_unit() +
          ". Depths are normal to the floor and of water alone; the mixture holds the air that the flow takes in by itself. "
          "The cavitation index is that of the mean velocity on the straight floor; it asks for care below 1.8, for "
          "air below 0.20.");
  html.open_table("dense", {{head("Station", m), "n"},
                            {head("Bed level", m), "n"},
                            {head("Depth", m), "n"},
                            {head("Velocity", p.velocity_unit()), "n"},
                            {head("Boundary layer", m), "n"},
                            {head("Energy level", m), "n"},
                            {head("Air", "%"), "n"},
                            {head("Mixture", m), "n"},
                            {"Cavitation index", "n"}});
  constexpr std::size_t rows = 12;
  const auto& points = largest->chute;
  const std::size_t last = points.size() - 1;
  for (std::size_t i = 0; i <= rows; ++i) {
    const auto& point = points[i * last / rows];
    html.row({p.level(point.station), p.level(point.bed_level), p.size(point.depth), p.velocity(point.velocity),
              p.size(point.boundary_layer), p.level(point.energy_level), fmt::format("{:.0f}", 100.0 * point.air_content),
              p.size(point.bulked_depth), p.ratio(point.cavitation_index)});
  }
  html.close_table();
}

}  // namespace

std::string input_path(const ReportInput& input) {
  return input.section.empty() ? input.key : input.section + "." + input.key;
}

void write_inputs(Html& html, const ReportData& data) {
  start_chapter(html, "inputs");
  html.element("p",
               "Every input as it was typed in the site file. Values that the file does not give are the program's defaults "
               "and are marked.");
  html.open_table("", {{"Key", "w"}, {"As given", ""}, {"Meaning", ""}, {"", "w"}});
  std::string section;
  for (const auto& input : data.context.inputs) {
    if (input.section != section) html.wide_row(escape_xml(input.section.empty() ? "(file)" : input.section), "group");
    section = input.section;
    html.row({fmt::format("<code id=\"input-{}\">{}</code>", escape_xml(input_path(input)), escape_xml(input.key)),
              escape_xml(input.typed), escape_xml(input.meaning), input.is_default ? "default" : ""},
             input.is_default ? "q" : "");
  }
  html.close_table();
}

void write_discharges(Html& html, const ReportData& data) {
  const auto& p = data.print;
  const std::string m = p.length_unit();
  start_chapter(html, "discharges");
  html.element("p",
               "The design runs over all of these discharges. The low tailwater governs sweep-out, the high tailwater governs "
               "drowning and the walls.");
  const double smallest = data.site.discharges.smallest;
  const bool gated = data.site.gates.given();
  if (gated) html.element("p", "All bays are open alike here; other gate patterns stand in the chapter on the site.");
  html.open_table("dense", {{head("Discharge", p.discharge_unit()), "n"},
                            {"Case", ""},
                            {head("Return period", "years"), "n"},
                            {head("Head on crest", m), "n"},
                            {head("Reservoir level", m), "n"},
                            {head("Width in use", m), "n"},
                            {gated ? head("Gates open", m) : std::string(), "n"},
                            {head("Tailwater, low", m), "n"},
                            {head("Tailwater, expected", m), "n"},
                            {head("Tailwater, high", m), "n"}});
  for (const auto& one : data.result.cases) {
    const bool named = one.origin != "range";
    html.row({p.discharge(one.discharge, smallest), named ? escape_xml(one.origin) : "",
              one.return_period > 0.0 ? fmt::format("{:g}", one.return_period) : "", p.level(one.crest_head),
              p.level(one.reservoir_level), p.level(one.width), gated ? p.level(one.gate_opening) : std::string(),
              p.level(one.tailwater_level[0]), p.level(one.tailwater_level[1]), p.level(one.tailwater_level[2])},
             named ? "strong" : "");
  }
  html.close_table();
}

void write_case_results(Html& html, const ReportData& data) {
  start_chapter(html, "cases");
  if (data.chosen == nullptr) return html.element("p", "No option could be sized.");
  const auto& p = data.print;
  const auto& g = data.chosen->governing;
  const std::string m = p.length_unit();
  html.element("p", margin_sentence(*data.chosen, p) +
                        " Depths are above the apron; the loss is the head that a free jump destroys. Required and available "
                        "depth and the place of the jump are for low tailwater; the "
                        "required depth holds the margin asked for in the site file.");
  html.open_table("dense", {{head("Discharge", p.discharge_unit()), "n"},
                            {"Case", ""},
                            {head("y<sub>1</sub>", m), "n"},
                            {head("V<sub>1</sub>", p.velocity_unit()), "n"},
                            {"F<sub>1</sub>", "n"},
                            {head("y<sub>2</sub>", m), "n"},
                            {head("Loss", m), "n"},
                            {head("Jump length", m), "n"},
                            {head("Required", m), "n"},
                            {head("Available", m), "n"},
                            {head("Margin, low", m), "n"},
                            {head("Margin, exp.", m), "n"},
                            {head("Margin, high", m), "n"},
                            {"Jump", "w"}});
  const double smallest = data.site.discharges.smallest;
  bool governing_written = false;
  const auto write_governing = [&] {
    governing_written = true;
    html.row({p.discharge(g.discharge, smallest), std::string("governing"), p.size(g.toe.y1), p.velocity(g.toe.V1),
              p.ratio(g.toe.F1), p.level(g.toe.y2), "", "", p.level(g.required_depth), p.level(g.available_depth),
              p.level(g.margin), "", "", ""},
             "strong");
  };
  for (const auto& row : rows_by_discharge(*data.chosen)) {
    const auto* low = row.by_case[0];
    if (low == nullptr) continue;
    const auto margin = [&](TailwaterCase which) {
      const auto* one = row.by_case[index_of(which)];
      return one == nullptr ? std::string() : p.level(one->margin);
    };
    // A governing discharge between two rows gets its own; one that is a row of the range is marked there.
    const bool governs = std::abs(g.discharge - low->discharge) <= 1e-6 * low->discharge;
    if (!governing_written && !governs && g.discharge < low->discharge) write_governing();
    std::string origin = origin_of(data, low->discharge);
    if (governs) origin += origin.empty() ? "governing" : ", governing";
    governing_written = governing_written || governs;
    html.row({p.discharge(low->discharge, smallest), origin, p.size(low->toe.y1), p.velocity(low->toe.V1), p.ratio(low->toe.F1),
              p.level(low->toe.y2), p.level(low->energy_loss), p.level(low->jump_length), p.level(low->required_depth),
              p.level(low->available_depth), margin(TailwaterCase::low), margin(TailwaterCase::expected),
              margin(TailwaterCase::high), jump_words(low->jump)},
             governs ? "strong" : "");
  }
  if (!governing_written) write_governing();
  html.close_table();
  const auto action = data.chosen->type->record().action;
  if (dissipators::makes_jump(action)) write_jump_places(html, data);
  if (!dissipators::replaces_chute(action)) write_chute(html, data);
}

}  // namespace quell::output
