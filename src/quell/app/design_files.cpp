#include "quell/app/design_files.h"

#include <fmt/format.h>

#include "quell/io/result_json.h"
#include "quell/output/drawing/figures.h"
#include "quell/output/drawing/site_figures.h"
#include "quell/output/report/report.h"

namespace quell::app {
namespace {

output::ReportContext context_of(const io::SiteFile& file, UnitSystem units) {
  output::ReportContext context{
      .program_version = QUELL_VERSION, .site_path = file.path, .site_digest = file.digest, .units = units, .inputs = {}};
  for (const auto& input : file.inputs)
    context.inputs.push_back({input.section, input.key, input.typed, input.meaning, input.is_default});
  return context;
}

/// Figures of the site's data, as far as there is any.
void add_site_figures(const site::ResolvedSite& resolved, UnitSystem units, std::vector<io::FileText>& files) {
  const auto add = [&](std::string name, std::string svg) {
    if (!svg.empty()) files.push_back({std::move(name), std::move(svg)});
  };
  add("frequency.svg", output::frequency_figure_svg(resolved, units));
  int number = 0;
  for (const auto& inflow : resolved.study.inflows) {
    ++number;
    add(fmt::format("inflow-{}.svg", number), output::routing_figure_svg(resolved, inflow, number, units));
  }
  add("rating.svg", output::rating_figure_svg(resolved, units));
  add("river.svg", output::river_figure_svg(resolved, units));
}

}  // namespace

std::vector<const dissipators::Dissipator*> wanted_types(const site::Site& site, bool all_types) {
  const auto catalogue = dissipators::catalogue();
  if (all_types) return {catalogue.begin(), catalogue.end()};
  std::vector<const dissipators::Dissipator*> types;
  for (const auto& id : site.basin.types)
    if (const auto* type = dissipators::find_dissipator(id)) types.push_back(type);
  return types;
}

std::string report_of(const io::SiteFile& file, const design::DesignResult& result, UnitSystem units) {
  return output::report_html(result.resolved.site, result, context_of(file, units));
}

std::vector<io::FileText> output_files(const io::SiteFile& file, const design::DesignResult& result, UnitSystem units) {
  std::vector<io::FileText> files{{"result.json", io::design_json(file, result)},
                                  {"report.html", report_of(file, result, units)}};
  if (result.chosen >= 0) {
    const auto& chosen = result.options[static_cast<std::size_t>(result.chosen)];
    const auto& site = result.resolved.site;
    files.push_back({"long-section.svg", output::long_section_svg(site, result, chosen, units)});
    if (auto chart = output::operation_figure_svg(chosen, units); !chart.empty())
      files.push_back({"operation.svg", std::move(chart)});
    files.push_back({"fields.svg", output::fields_figure_svg(site, result, units)});
    files.push_back({"tailwater.svg", output::tailwater_figure_svg(site, result, chosen, units)});
  }
  add_site_figures(result.resolved, units, files);
  return files;
}

}  // namespace quell::app
