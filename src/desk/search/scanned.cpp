#include "desk/search/scanned.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/label_item.hpp"
#include "desk/search/hit_words.hpp"
#include "exchange/barcode/read_label.hpp"

namespace sparewell::desk {
namespace {

constexpr char group_separator = '\x1d';
/// Of a GTIN-12 and a GTIN-14; shorter numbers may be serial numbers of the clinic's own.
constexpr std::size_t shortest_number = 12;
constexpr std::size_t longest_number = 14;

bool digits_alone(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

std::string read_words(const exchange::Label& label) {
  std::string words;
  const auto add = [&](const std::string& text) {
    if (!words.empty()) words += ", ";
    words += text;
  };
  if (!label.gtin.empty()) add(say("item number {}", label.gtin));
  if (!label.product.empty()) add(say("product {}", label.product));
  if (!label.lot.empty()) add(say("lot {}", label.lot));
  if (!label.serial.empty()) add(say("serial {}", label.serial));
  return words;
}

/// The unit that bears the serial number; those in use before those that have ended.
std::optional<std::size_t> unit_of(const Day& day, const ItemCode& item,
                                   const std::string& serial) {
  if (serial.empty()) return std::nullopt;
  std::optional<std::size_t> found;
  const auto& units = day.clinic().units;
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (units[i].serial != serial || (!item.empty() && units[i].item != item)) continue;
    if (!found || units[i].in_use_on(day.today())) found = i;
  }
  return found;
}

std::optional<std::size_t> shelf_of(const Day& day, const ItemCode& item, const std::string& lot) {
  if (lot.empty()) return std::nullopt;
  const auto& shelf = day.clinic().shelf;
  const auto found = std::ranges::find_if(shelf, [&](const StockLevel& level) {
    return level.lot.lot == lot && level.quantity > 0 && (item.empty() || level.lot.item == item);
  });
  if (found == shelf.end()) return std::nullopt;
  return static_cast<std::size_t>(found - shelf.begin());
}

}  // namespace

bool looks_scanned(std::string_view typed) {
  if (typed.size() > 3 && (typed.front() == ']' || typed.front() == '(' || typed.front() == '+')) {
    return true;
  }
  if (typed.find(group_separator) != typed.npos) return true;
  if (typed.size() > longest_number + 2 && (typed.starts_with("01") || typed.starts_with("02")) &&
      digits_alone(typed.substr(0, longest_number + 2))) {
    return true;
  }
  return typed.size() >= shortest_number && typed.size() <= longest_number && digits_alone(typed);
}

Expected<Hit> where_label_leads(const Day& day, std::string_view scan) {
  const auto label = exchange::read_label(scan, day.today());
  if (!label) return tl::unexpected{label.error()};
  if (!label->doubt.empty()) return refuse(label->doubt);
  ItemCode code;
  if (label->names_item()) {
    const auto item = item_of_label(*label, day.clinic().items);
    if (!item) return tl::unexpected{item.error()};
    code = item->code;
  }
  if (const auto unit = unit_of(day, code, label->serial)) return part_hit(day, *unit);
  if (const auto level = shelf_of(day, code, label->lot)) return lot_hit(day, *level);
  if (!code.empty()) {
    const auto& items = day.clinic().items;
    const auto found = std::ranges::find(items, code, &Item::code);
    return item_hit(day, static_cast<std::size_t>(found - items.begin()));
  }
  return refuse(
      say("The label says {}; no part, lot or item here answers to it. Scan the barcode "
          "that names the item as well.",
          read_words(*label)));
}

}  // namespace sparewell::desk
