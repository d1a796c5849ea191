/// Parts whose patient should not get the same again: nothing is ordered for them, or another size.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::desk {

class LimbRecords;

/// Needs of the next so many days are told; later ones are held back as well (our choice).
inline constexpr int told_days = 90;

struct HeldNeed {
  std::size_t unit = 0;      ///< position in Clinic::units
  bool sensitivity = false;  ///< otherwise the size no longer fits
  double chance = 0;         ///< of being worn out within told_days
  std::string words;         ///< why, as a sentence
  /// The size that suits the limb as it was measured or is foreseen, where the catalogue has it and
  /// no sensitivity is against it: what the part needs is foreseen of this item.
  std::optional<ItemCode> next_item = {};
  /// The size still fits by the last measurement, or it is not certain, and is foreseen not to.
  bool forecast = false;
  double chance_outside = 0;  ///< of a forecast: of the limb, on the day that decides
};

/// The units in use whose item conflicts with a sensitivity that is recorded of their patient and
/// that no clinician decided about, whose size range the limb has left by a measurement that is not
/// old, or will more likely than not have left (LifeOfUnit::needed_until, see foresee_limbs) on the
/// day that decides. Of an item that is kept in stock that is the day on which an order of the next
/// order day has arrived, because what is needed later can still be ordered later, or p50 where the
/// part is likelier than not replaced by then; of an item that is ordered for its patient it is
/// p50, because that piece cannot serve another. What is only possible, not declared or not known
/// holds nothing back here: it is asked when the part is issued. In the order of `lives`.
[[nodiscard]] std::vector<HeldNeed> held_needs(const Clinic& clinic,
                                               const std::vector<wear::LifeOfUnit>& lives,
                                               Date today);
[[nodiscard]] std::vector<HeldNeed> held_needs(const Clinic& clinic, const LimbRecords& limbs,
                                               const std::vector<wear::LifeOfUnit>& lives,
                                               Date today);

/// `lives` without those of the units that are held back; those with a next item stay, as needing
/// that.
[[nodiscard]] std::vector<wear::LifeOfUnit> without_held(const std::vector<wear::LifeOfUnit>& lives,
                                                         const std::vector<HeldNeed>& held);

}  // namespace sparewell::desk
