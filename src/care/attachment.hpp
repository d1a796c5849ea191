/// Whether an item goes together with what the patient wears on that side.
#pragma once

#include <vector>

#include "care/chain_rules.hpp"
#include "care/gravity.hpp"
#include "care/worn.hpp"

namespace sparewell::care {

enum class Mismatch {
  thread_differs,      ///< from that of `other`
  thread_not_stated,   ///< of the item or of `other`, so that it cannot be compared
  liner_not_for_this,  ///< a liner of another attachment than the suspension holds by
  not_in_suspension,   ///< a part that has no work in this suspension
  materials_meet       ///< the materials of the item and of `other` need looking after
};

struct AttachmentFinding {
  Mismatch mismatch = Mismatch::thread_differs;
  const Item* other = nullptr;           ///< what it was compared with; nullptr for the suspension
  const MaterialPair* pair = nullptr;     ///< for materials_meet
};

/// Materials that meet are a note; everything else is to be looked at first.
[[nodiscard]] Gravity gravity(Mismatch mismatch);

/// The patient may be about to change the whole set, so nothing here stops an issue. Points into
/// what `worn` points into, and into `rules`.
[[nodiscard]] std::vector<AttachmentFinding> check_attachment(const ChainRules& rules,
                                                              const Item& item, const Worn& worn);

}  // namespace sparewell::care
