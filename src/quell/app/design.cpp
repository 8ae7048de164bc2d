// quell design SITE [--out DIR] [--all-types]: the main job.
#include <fmt/format.h>

#include <chrono>

#include "quell/app/commands.h"
#include "quell/app/site_input.h"
#include "quell/design/design.h"
#include "quell/io/files.h"
#include "quell/io/result_json.h"
#include "quell/output/drawing/figures.h"
#include "quell/output/drawing/site_figures.h"
#include "quell/output/report/report.h"

namespace quell::app {
namespace {

std::vector<const dissipators::Dissipator*> wanted_types(const site::Site& site, bool all_types) {
  const auto catalogue = dissipators::catalogue();
  if (all_types) return {catalogue.begin(), catalogue.end()};
  std::vector<const dissipators::Dissipator*> types;
  for (const auto& id : site.basin.types)
    if (const auto* type = dissipators::find_dissipator(id)) types.push_back(type);
  return types;
}

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

/// Report, result and figures; empty where there is no folder to write to.
std::vector<io::FileText> output_files(const io::SiteFile& file, const design::DesignResult& result, UnitSystem units) {
  std::vector<io::FileText> files{{"result.json", io::design_json(file, result)},
                                  {"report.html", output::report_html(result.resolved.site, result, context_of(file, units))}};
  if (result.chosen >= 0) {
    const auto& chosen = result.options[static_cast<std::size_t>(result.chosen)];
    const auto& site = result.resolved.site;
    files.push_back({"long-section.svg", output::long_section_svg(site, result, chosen, units)});
    files.push_back({"fields.svg", output::fields_figure_svg(site, result, units)});
    files.push_back({"tailwater.svg", output::tailwater_figure_svg(site, result, chosen, units)});
  }
  add_site_figures(result.resolved, units, files);
  return files;
}

}  // namespace

int design(const DesignArguments& arguments) {
  const auto file = io::read_site_file(arguments.site);
  if (!report_problems(file)) return exit_bad_input;
  const bool writes = !arguments.out.empty();
  const auto types = wanted_types(file.site, arguments.all_types);
  const auto start = std::chrono::steady_clock::now();
  auto result = design::run_design(file.site, {.types = types, .with_workings = writes, .with_profiles = writes});
  if (!result) {
    fmt::print(stderr, "{}: no physical answer: {}.\n", file.path, result.error().reason);
    return exit_no_result;
  }
  result->engine_seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  const UnitSystem units = arguments.common.units.value_or(file.site.units);
  if (writes) {
    const auto files = output_files(file, *result, units);
    if (const auto written = io::write_files(arguments.out, files); !written) {
      fmt::print(stderr, "quell design: nothing was written: {}\n", written.error());
      return exit_no_result;
    }
  }
  if (arguments.common.json) {
    fmt::print("{}", io::design_json(file, *result));
  } else {
    fmt::print("{}", output::terminal_summary(result->resolved.site, *result, units));
    if (writes) fmt::print("\nWritten to {}: report.html, result.json, figures.\n", arguments.out);
  }
  if (result->chosen < 0) return exit_no_result;
  return result->all_requirements_met ? exit_done : exit_requirement_fails;
}

}  // namespace quell::app
