/// A supplier's price list beside the catalogue: what changes, and what a person must look at.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/item.hpp"

namespace sparewell::supply {

/// One line of a price list. What the list does not say stays as the catalogue has it.
struct PriceRow {
  int row = 0;  ///< in the file
  std::string supplier_item;
  std::string item_code;
  std::string gtin;
  std::string description;
  std::optional<Money> unit_cost;
  std::optional<int> pack_size;
  std::optional<int> min_order;
  std::optional<int> lead_days;
  std::optional<std::vector<PriceBreak>> price_breaks;
};

/// A row that was not taken, the field that is wrong ("" for the row as a whole), and why.
struct RefusedPriceRow {
  int row = 0;
  std::string field;
  std::string reason;
};

/// Why a price is not believed without a person.
enum class PriceDoubt {
  large_change,  ///< up or down by more than half
  per_pack,      ///< about the old price times the pack size: the list may price packs
  per_piece,     ///< about the old price by the pack size: the catalogue may have priced packs
  currency,      ///< in another currency than before
  zero,          ///< it costs nothing
  price_break    ///< a price break costs more than fewer pieces, or changed by more than half
};

struct PriceChange {
  Item before;
  Item after;  ///< as it would be kept
  int row = 0;
  std::vector<PriceDoubt> doubts;
  /// The list's words, when they differ from the catalogue's; "" when they do not.
  std::string other_description;
  /// The price changed and the list gives no price breaks: those of the catalogue stay.
  bool keeps_price_breaks = false;

  [[nodiscard]] bool changes_item() const { return !(before == after); }
};

struct PriceComparison {
  std::vector<PriceChange> changes;  ///< in the order of the list; those that only word it too
  std::vector<PriceRow> unknown;     ///< items that the catalogue does not have
  std::vector<Item> missing;         ///< the supplier's items that the list leaves out
  std::vector<RefusedPriceRow> refused;
  int unchanged = 0;
};

/// The new price by the old one; empty when either is unknown or zero, or the currency is another.
[[nodiscard]] std::optional<double> price_ratio(const std::optional<Money>& before,
                                                const std::optional<Money>& after);

/// Matches each row with one of the supplier's items: by the supplier's part number, else the
/// clinic's code, else the trade item number (GTIN, leading zeros aside). A row whose numbers name
/// different items, or that names an item that an earlier row named, is refused. An item of another
/// supplier is unknown here. With `take_descriptions` the list's description replaces the clinic's.
///
/// A price is doubtful when it changes by more than 50 %, or lies within 25 % of the old price
/// times (or by) the pack size of the catalogue or of the list, where that is 2 or more and the
/// price changes by more than 25 %: to confuse packs with pieces is a usual slip of such lists
/// (common practice, no source).
[[nodiscard]] PriceComparison compare_prices(const std::vector<PriceRow>& rows,
                                             const std::vector<Item>& catalogue,
                                             const SupplierName& supplier,
                                             bool take_descriptions = false);

}  // namespace sparewell::supply
