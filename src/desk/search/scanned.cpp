#include "desk/search/scanned.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/label_item.hpp"
#include "desk/search/hit_words.hpp"
#include "exchange/barcode/gs1_elements.hpp"
#include "exchange/barcode/read_label.hpp"

namespace sparewell::desk {
namespace {

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

/// The parts that a label may mean: those in use, or those that have ended where none is in use.
/// An empty item is any.
std::vector<Hit> parts(const Day& day, std::string Unit::*number, const std::string& read,
                       const ItemCode& item) {
  std::vector<Hit> in_use;
  std::vector<Hit> ended;
  if (read.empty()) return in_use;
  const auto& units = day.clinic().units;
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (units[i].*number != read || (!item.empty() && units[i].item != item)) continue;
    (units[i].in_use_on(day.today()) ? in_use : ended).push_back(part_hit(day, i));
  }
  return in_use.empty() ? ended : in_use;
}

/// A lot that lies at several places is one hit, because they lead to the same row.
std::vector<Hit> lots(const Day& day, const std::string& lot, const ItemCode& item) {
  std::vector<Hit> found;
  if (lot.empty()) return found;
  const auto& shelf = day.clinic().shelf;
  for (std::size_t i = 0; i < shelf.size(); ++i) {
    const auto& level = shelf[i];
    if (level.lot.lot != lot || level.quantity <= 0) continue;
    if (!item.empty() && level.lot.item != item) continue;
    const bool known = std::ranges::any_of(
        found, [&](const Hit& hit) { return hit.there.item == level.lot.item; });
    if (!known) found.push_back(lot_hit(day, i));
  }
  return found;
}

Hit hit_of_item(const Day& day, const ItemCode& code) {
  const auto& items = day.clinic().items;
  const auto found = std::ranges::find(items, code, &Item::code);
  return item_hit(day, static_cast<std::size_t>(found - items.begin()));
}

std::string nothing_of_it(const exchange::Label& label) {
  if (!label.serial.empty() && !label.lot.empty()) {
    return say(
        "No part here bears serial {}, and none is or was of lot {}; this is the item that the "
        "label names.",
        label.serial, label.lot);
  }
  if (!label.serial.empty()) {
    return say("No part here bears serial {}; this is the item that the label names.",
               label.serial);
  }
  if (!label.lot.empty()) {
    return say(
        "No piece here is or was of lot {}, on the shelf or with a patient; this is the item that "
        "the label names.",
        label.lot);
  }
  return {};
}

/// Of an item of the catalogue, or of any when the label does not name one.
LabelHits answers_to(const Day& day, const exchange::Label& label, const ItemCode& item) {
  if (auto found = parts(day, &Unit::serial, label.serial, item); !found.empty()) {
    return {std::move(found), {}};
  }
  if (auto found = lots(day, label.lot, item); !found.empty()) return {std::move(found), {}};
  if (auto found = parts(day, &Unit::lot, label.lot, item); !found.empty()) {
    auto words =
        label.serial.empty()
            ? say("No piece of lot {} is on the shelf; these parts are or were of it.", label.lot)
            : say("No part here bears serial {}; these are or were of its lot {}.", label.serial,
                  label.lot);
    return {std::move(found), std::move(words)};
  }
  if (item.empty()) return {};
  return {{hit_of_item(day, item)}, nothing_of_it(label)};
}

}  // namespace

bool looks_scanned(std::string_view typed) {
  if (typed.size() > 3 && (typed.front() == ']' || typed.front() == '(' || typed.front() == '+')) {
    return true;
  }
  if (typed.find(exchange::group_separator) != typed.npos) return true;
  if (typed.size() > longest_number + 2 && (typed.starts_with("01") || typed.starts_with("02")) &&
      digits_alone(typed.substr(0, longest_number + 2))) {
    return true;
  }
  return typed.size() >= shortest_number && typed.size() <= longest_number && digits_alone(typed);
}

Expected<LabelHits> where_label_leads(const Day& day, std::string_view scan) {
  const auto label = exchange::read_label(scan, day.today());
  if (!label) return tl::unexpected{label.error()};
  ItemCode code;
  std::string doubt = label->doubt;
  if (label->names_item()) {
    const auto item = item_of_label(*label, day.clinic().items);
    if (!item) {
      // Its serial or lot may be known all the same, of an item whose number is not.
      doubt = item.error().sentence;
    } else {
      code = item->code;
    }
  }
  auto scanned = answers_to(day, *label, code);
  if (!doubt.empty()) scanned.doubt = doubt;
  if (!scanned.hits.empty()) return scanned;
  const auto read = read_words(*label);
  if (read.empty()) {
    return refuse(said("The label names no item, lot or serial; scan its other barcode."));
  }
  if (label->names_item()) return refuse(say("The label says {}. {}", read, doubt));
  return refuse(
      say("The label says {}; no part, lot or item here answers to it. Scan the barcode "
          "that names the item as well.",
          read));
}

}  // namespace sparewell::desk
