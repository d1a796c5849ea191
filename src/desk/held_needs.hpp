/// Parts whose patient should not get the same again: nothing is ordered for them, or another size.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::desk {

/// Needs of the next so many days are told; later ones are held back as well (our choice).
inline constexpr int told_days = 90;

struct HeldNeed {
  std::size_t unit = 0;      ///< position in Clinic::units
  bool sensitivity = false;  ///< otherwise the size no longer fits
  double chance = 0;         ///< of being worn out within told_days
  std::string words;         ///< why, as a sentence
  /// The size that suits the limb as it was measured, where the catalogue has it and no sensitivity
  /// is against it: what the part needs is foreseen of this item.
  std::optional<ItemCode> next_item = {};
};

/// The units in use whose item conflicts with a sensitivity that is recorded of their patient and
/// that no clinician decided about, or
/// whose size range the limb has left by a measurement that is not old. What is only possible, not
/// declared or not known holds nothing back here: it is asked when the part is issued. In the order
/// of `lives`.
[[nodiscard]] std::vector<HeldNeed> held_needs(const Clinic& clinic,
                                               const std::vector<wear::LifeOfUnit>& lives,
                                               Date today);

/// `lives` without those of the units that are held back; those with a next item stay, as needing
/// that.
[[nodiscard]] std::vector<wear::LifeOfUnit> without_held(const std::vector<wear::LifeOfUnit>& lives,
                                                         const std::vector<HeldNeed>& held);

}  // namespace sparewell::desk
