#include "care/next_size.hpp"

#include <cmath>
#include <tuple>

namespace sparewell::care {
namespace {

auto make_of(const Item& item) {
  return std::tie(item.kind, item.attachment, item.material, item.thread, item.supplier,
                  item.size_at_cm);
}

}  // namespace

const Item* size_for(const Item& worn, double circumference_cm,
                     const std::vector<Item>& catalogue) {
  const Item* best = nullptr;
  double closest = 0;
  for (const Item& item : catalogue) {
    if (!item.size_min_cm || !item.size_max_cm || item.code == worn.code) continue;
    if (make_of(item) != make_of(worn)) continue;
    if (description_without_size(item) != description_without_size(worn)) continue;
    if (circumference_cm < *item.size_min_cm || circumference_cm > *item.size_max_cm) continue;
    const double middle = (*item.size_min_cm + *item.size_max_cm) / 2;
    const double away =
        std::abs(circumference_cm - middle) + (*item.size_max_cm - *item.size_min_cm);
    if (best == nullptr || std::tie(away, item.code) < std::tie(closest, best->code)) {
      best = &item;
      closest = away;
    }
  }
  return best;
}

}  // namespace sparewell::care
