#include "supply/price_list.hpp"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "clinic/say.hpp"

namespace sparewell::supply {
namespace {

constexpr double large = 0.5;
constexpr double about = 0.25;

std::string without_zeros(const std::string& gtin) {
  const auto first = gtin.find_first_not_of('0');
  return first == std::string::npos ? std::string{} : gtin.substr(first);
}

/// Items of one supplier by the numbers that a list may name them by; nullptr where several share
/// a number.
class Numbers {
 public:
  Numbers(const std::vector<Item>& catalogue, const SupplierName& supplier) {
    for (const Item& item : catalogue) {
      if (item.supplier != supplier) continue;
      put(by_supplier_item_, item.supplier_item, item);
      put(by_code_, item.code.text, item);
      put(by_gtin_, without_zeros(item.gtin), item);
    }
  }

  struct Found {
    const Item* item = nullptr;
    RefusedPriceRow refusal;  ///< with a reason when the row cannot be matched
  };

  [[nodiscard]] Found find(const PriceRow& row) const {
    Found found;
    look(found, by_supplier_item_, row.supplier_item, row.row, "supplier_item");
    look(found, by_code_, row.item_code, row.row, "item_code");
    look(found, by_gtin_, without_zeros(row.gtin), row.row, "gtin");
    return found;
  }

 private:
  using Map = std::unordered_map<std::string, const Item*>;

  static void put(Map& map, const std::string& number, const Item& item) {
    if (number.empty()) return;
    const auto [at, is_new] = map.emplace(number, &item);
    if (!is_new) at->second = nullptr;
  }

  static void look(Found& found, const Map& map, const std::string& number, int row,
                   const char* field) {
    if (number.empty() || !found.refusal.reason.empty()) return;
    const auto at = map.find(number);
    if (at == map.end()) return;
    if (at->second == nullptr) {
      if (found.item == nullptr) {
        found.refusal = {row, field,
                         say("'{}' is the number of several items of the catalogue; give "
                             "the clinic's item code",
                             number)};
      }
      return;
    }
    if (found.item != nullptr && found.item != at->second) {
      found.refusal = {row, field,
                       say("'{}' is {}, but another number of the row is {}; look which "
                           "one is meant",
                           number, at->second->code.text, found.item->code.text)};
    }
    found.item = at->second;
  }

  Map by_supplier_item_;
  Map by_code_;
  Map by_gtin_;
};

Item with_row(Item item, const PriceRow& row, bool take_descriptions) {
  if (row.unit_cost) {
    item.unit_cost = row.unit_cost;
    item.currency = row.unit_cost->currency;
  }
  if (row.pack_size) item.pack_size = *row.pack_size;
  if (row.min_order) item.min_order = *row.min_order;
  if (row.lead_days) item.lead_days = row.lead_days;
  if (row.price_breaks) item.price_breaks = *row.price_breaks;
  if (take_descriptions && !row.description.empty()) item.description = row.description;
  return item;
}

bool near(double ratio, double wanted) {
  return std::abs(ratio / wanted - 1) <= about;
}

bool doubtful_breaks(const Item& before, const Item& after) {
  std::optional<Money> dearest = after.unit_cost;
  for (const PriceBreak& step : after.price_breaks) {
    if (dearest && step.unit_cost.currency != dearest->currency) return true;
    if (dearest && step.unit_cost.minor > dearest->minor) return true;
    dearest = step.unit_cost;
    for (const PriceBreak& old : before.price_breaks) {
      if (old.from_quantity != step.from_quantity) continue;
      const auto ratio = price_ratio(old.unit_cost, step.unit_cost);
      if (ratio && std::abs(*ratio - 1) > large) return true;
    }
  }
  return false;
}

std::vector<PriceDoubt> doubts_of(const Item& before, const Item& after) {
  std::vector<PriceDoubt> doubts;
  if (after.unit_cost && after.unit_cost != before.unit_cost) {
    if (before.unit_cost && before.unit_cost->currency != after.unit_cost->currency) {
      doubts.push_back(PriceDoubt::currency);
    }
    if (after.unit_cost->minor == 0) doubts.push_back(PriceDoubt::zero);
    if (const auto ratio = price_ratio(before.unit_cost, after.unit_cost)) {
      if (std::abs(*ratio - 1) > large) doubts.push_back(PriceDoubt::large_change);
      const int pack = std::max(before.pack_size, after.pack_size);
      if (pack > 1 && std::abs(*ratio - 1) > about) {
        if (near(*ratio, pack)) doubts.push_back(PriceDoubt::per_pack);
        if (near(*ratio, 1.0 / pack)) doubts.push_back(PriceDoubt::per_piece);
      }
    }
  }
  const bool breaks_matter =
      before.price_breaks != after.price_breaks || before.unit_cost != after.unit_cost;
  if (breaks_matter && doubtful_breaks(before, after)) doubts.push_back(PriceDoubt::price_break);
  return doubts;
}

PriceChange change_of(const Item& before, const PriceRow& row, bool take_descriptions) {
  PriceChange change{before, with_row(before, row, take_descriptions), row.row, {}, {}, false};
  change.doubts = doubts_of(change.before, change.after);
  if (!row.description.empty() && row.description != before.description) {
    change.other_description = row.description;
  }
  change.keeps_price_breaks = !row.price_breaks && !before.price_breaks.empty() &&
                              change.after.unit_cost != before.unit_cost;
  return change;
}

}  // namespace

std::optional<double> price_ratio(const std::optional<Money>& before,
                                  const std::optional<Money>& after) {
  if (!before || !after || before->currency != after->currency) return std::nullopt;
  if (before->minor <= 0 || after->minor <= 0) return std::nullopt;
  return static_cast<double>(after->minor) / static_cast<double>(before->minor);
}

PriceComparison compare_prices(const std::vector<PriceRow>& rows,
                               const std::vector<Item>& catalogue, const SupplierName& supplier,
                               bool take_descriptions) {
  const Numbers numbers{catalogue, supplier};
  PriceComparison made;
  std::unordered_map<const Item*, int> named;
  for (const PriceRow& row : rows) {
    const auto found = numbers.find(row);
    if (!found.refusal.reason.empty()) {
      made.refused.push_back(found.refusal);
      continue;
    }
    if (found.item == nullptr) {
      made.unknown.push_back(row);
      continue;
    }
    const auto [at, is_new] = named.emplace(found.item, row.row);
    if (!is_new) {
      made.refused.push_back({row.row, "",
                              say("names {} again, as row {} did; leave one of them",
                                  found.item->code.text, at->second)});
      continue;
    }
    auto change = change_of(*found.item, row, take_descriptions);
    if (change.changes_item() || !change.other_description.empty()) {
      made.changes.push_back(std::move(change));
    } else {
      ++made.unchanged;
    }
  }
  for (const Item& item : catalogue) {
    if (item.supplier != supplier) continue;
    // Items are named by their place in the catalogue.
    if (!named.contains(&item)) made.missing.push_back(item);
  }
  return made;
}

}  // namespace sparewell::supply
