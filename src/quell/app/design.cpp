// quell design SITE [--out DIR] [--all-types]: the main job.
#include <fmt/format.h>

#include <chrono>

#include "quell/app/commands.h"
#include "quell/app/design_files.h"
#include "quell/app/site_input.h"
#include "quell/design/design.h"
#include "quell/io/result_json.h"
#include "quell/output/report/report.h"

namespace quell::app {

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
