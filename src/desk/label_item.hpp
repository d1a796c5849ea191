/// Which item of the catalogue a scanned label means.
#pragma once

#include <vector>

#include "clinic/item.hpp"
#include "clinic/refusal.hpp"
#include "exchange/barcode/label.hpp"

namespace sparewell::desk {

/// By item number (GTIN) or, on HIBC labels, by the supplier's item number; letters and digits
/// alone are compared, because HIBC writes no others. Refuses a label that names no item, one that
/// no item of the catalogue answers to, and one that several do. The number of a larger package of
/// a known item is refused as such: it does not say how many pieces are in it.
[[nodiscard]] Expected<Item> item_of_label(const exchange::Label& label,
                                           const std::vector<Item>& catalogue);

}  // namespace sparewell::desk
