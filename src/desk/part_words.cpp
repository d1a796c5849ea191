#include "desk/part_words.hpp"

#include <array>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// In the order of Kind.
constexpr std::array plurals{to_say("liners"), to_say("sleeves"), to_say("locks"), to_say("pins"),
                             to_say("valves"), to_say("pumps"),   to_say("socks")};

}  // namespace

std::string item_words(const Item& item) {
  const auto name = item.description.empty() ? kind_words(item) : item.description;
  // Many catalogues write the size into the description; saying it twice would only cost width.
  if (item.size_label.empty() || name.find(item.size_label) != std::string::npos) return name;
  return say("{}, size {}", name, item.size_label);
}

std::string kind_words(const Item& item) {
  if (item.kind == Kind::sleeve) return said("suspension sleeve");
  if (item.kind == Kind::pump) return said("vacuum pump");
  if (item.kind == Kind::valve) return said("one-way valve");
  if (item.kind == Kind::lock) return said("shuttle lock");
  if (item.kind != Kind::liner) return shown_word(item.kind);
  switch (item.attachment) {
    case Attachment::locking:
      return said("locking liner");
    case Attachment::cushion:
      return said("cushion liner");
    case Attachment::seal:
      return said("liner with seal");
    default:
      return said("liner");
  }
}

std::string kind_plural(Kind kind) {
  return said(plurals.at(static_cast<std::size_t>(kind)));
}

std::string lot_words(const Unit& unit) {
  if (unit.lot.empty() && unit.serial.empty()) return said("no lot recorded");
  if (unit.serial.empty()) return say("lot {}", unit.lot);
  if (unit.lot.empty()) return say("serial {}", unit.serial);
  return say("lot {}, serial {}", unit.lot, unit.serial);
}

Cell cost_cell(const std::optional<Money>& unit_cost, int quantity) {
  if (!unit_cost) return {said("no price"), std::nullopt};
  const auto cost = *unit_cost * quantity;
  return {amount_words(cost), cost.major()};
}

Cell count_cell(int count) {
  return {std::to_string(count), count};
}

Cell date_cell(const std::optional<Date>& date, const std::string& otherwise) {
  Cell cell{date_words(date, otherwise), std::nullopt};
  if (date) cell.number = static_cast<double>(date->time_since_epoch().count());
  return cell;
}

}  // namespace sparewell::desk
