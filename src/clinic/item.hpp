/// One catalogue line: a maker's part in one size, as the clinic buys it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// A price that holds from a quantity upwards.
struct PriceBreak {
  int from_quantity = 1;
  Money unit_cost;

  friend bool operator==(const PriceBreak&, const PriceBreak&) = default;
};

struct Item {
  ItemCode code;
  std::string description;
  Kind kind = Kind::liner;
  Attachment attachment = Attachment::none;
  Material material = Material::other;
  std::string size_label;
  std::optional<double> size_min_cm;  ///< smallest limb circumference it fits
  std::optional<double> size_max_cm;  ///< largest limb circumference it fits
  std::optional<double> size_at_cm;   ///< height above the distal end where that is measured
  std::vector<std::string> constituents;
  std::string billing_code;
  SupplierName supplier;
  std::string supplier_item;  ///< the supplier's part number
  std::optional<Money> unit_cost;
  Currency currency;
  int pack_size = 1;  ///< pieces in the smallest pack that can be ordered
  int min_order = 1;  ///< pieces; orders below are not accepted
  std::vector<PriceBreak> price_breaks;
  std::optional<int> lead_days;        ///< quoted days from order to receipt
  std::optional<int> shelf_life_days;  ///< from manufacture to use-by
  std::string thread;                  ///< thread of pin and lock, for example "M10"
  std::string gtin;
  bool stocked = true;  ///< false: ordered for a named patient only
  std::optional<int> warranty_days = {};  ///< the maker's term, in calendar days from the issue

  friend bool operator==(const Item&, const Item&) = default;
};

/// The description less the last mention of the size label: alike for all sizes of one line of a
/// maker.
[[nodiscard]] std::string description_without_size(const Item& item);

}  // namespace sparewell
