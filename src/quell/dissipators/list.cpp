// The list of dissipator types. A new type is its own file, which defines `const Dissipator& <id>()`, and one line here.
#include "quell/dissipators/catalogue.h"

namespace quell::dissipators {

// clang-format off: one line a type
#define QUELL_DISSIPATORS(type) \
  type(type_1)                  \
  type(type_2)                  \
  type(type_3)                  \
  type(type_4)                  \
  type(low_froude)              \
  type(sloping_apron)           \
  type(saf)                     \
  type(saf_flared)              \
  type(baffled_end_sill)        \
  type(roller_bucket_solid)     \
  type(roller_bucket_slotted)   \
  type(baffled_apron)           \
  type(impact)                  \
  type(straight_drop)           \
  type(riprap_pool)             \
  type(flip_bucket)
// clang-format on

#define QUELL_DECLARE(id) const Dissipator& id();
QUELL_DISSIPATORS(QUELL_DECLARE)
#undef QUELL_DECLARE

std::span<const Dissipator* const> catalogue() {
#define QUELL_ENTRY(id) &id(),
  static const Dissipator* const list[] = {QUELL_DISSIPATORS(QUELL_ENTRY)};
#undef QUELL_ENTRY
  return list;
}

const Dissipator* find_dissipator(std::string_view id) {
  for (const Dissipator* type : catalogue())
    if (type->record().id.view() == id) return type;
  return nullptr;
}

}  // namespace quell::dissipators
