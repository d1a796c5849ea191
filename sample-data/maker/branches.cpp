#include "branches.hpp"

#include <array>

namespace sparewell::sample {
namespace {

constexpr std::array<const char*, 9> names{"",     "Hillside", "Harbour", "Mill Lane", "Orchard",
                                           "Ford", "Lakeside", "Weir",    "Old Bridge"};

}  // namespace

void spread_over_branches(Clinic& clinic, int places) {
  if (places < 2) return;
  const auto count = static_cast<std::size_t>(places);
  for (std::size_t i = 0; i < clinic.patients.size(); ++i) {
    clinic.patients[i].place = names[i % count];
  }
  std::vector<StockLevel> moved;
  for (std::size_t i = 0; i < clinic.shelf.size(); i += 2) {
    StockLevel& level = clinic.shelf[i];
    if (sort_of_place(clinic.places, level.place) != PlaceSort::store || level.quantity < 3) {
      continue;
    }
    StockLevel part = level;
    part.quantity = level.quantity / 3;
    part.place = names[1 + i / 2 % (count - 1)];
    level.quantity -= part.quantity;
    moved.push_back(std::move(part));
  }
  clinic.shelf.insert(clinic.shelf.end(), moved.begin(), moved.end());
}

}  // namespace sparewell::sample
