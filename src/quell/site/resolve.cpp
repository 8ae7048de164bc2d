#include "quell/site/study.h"

namespace quell::site {

Outcome<ResolvedSite> resolve(const Site& site) {
  ResolvedSite resolved{site, {}};
  return resolved;
}

}  // namespace quell::site
