#include "desk/taken_spares.hpp"

#include <algorithm>

#include "desk/issue_pieces.hpp"
#include "supply/picking.hpp"

namespace sparewell::desk {

std::vector<StockLevel> take_spares(std::vector<StockLevel>& shelf, const Clinic& clinic,
                                    const ItemCode& item, const PatientRef& patient, int quantity,
                                    Date last_day, int for_others) {
  std::vector<StockLevel> levels;
  std::ranges::copy_if(shelf, std::back_inserter(levels), [&](const StockLevel& level) {
    return level.lot.item == item && level.quantity > 0;
  });
  const int held = std::max(0, promised_to_others(clinic, item, patient, "") - for_others);
  const auto picked =
      supply::first_expiry_first_out(levels, held + quantity, last_day, "", clinic.places);
  std::vector<StockLevel> taken;
  int skip = held;
  for (StockLevel level : picked.lots) {
    const int skipped = std::min(skip, level.quantity);
    skip -= skipped;
    level.quantity -= skipped;
    if (level.quantity <= 0) continue;
    for (StockLevel& there : shelf) {
      if (there.lot == level.lot && there.place == level.place) there.quantity -= level.quantity;
    }
    taken.push_back(std::move(level));
  }
  return taken;
}

}  // namespace sparewell::desk
