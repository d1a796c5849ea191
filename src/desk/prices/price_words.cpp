#include "desk/prices/price_words.hpp"

#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::PriceChange;
using supply::PriceDoubt;

std::string cost_words(const std::optional<Money>& cost) {
  return cost ? amount_words(*cost) : said("not known");
}

std::string days_words(const std::optional<int>& days) {
  return days ? number_words(*days) : said("not known");
}

std::string percent_words(const std::optional<Money>& before, const std::optional<Money>& after) {
  const auto ratio = supply::price_ratio(before, after);
  if (!ratio) return {};
  const double percent = 100 * (*ratio - 1);
  const double size = std::abs(percent);
  return ", " + (percent > 0 ? say("up {:.1f} %", size) : say("down {:.1f} %", size));
}

std::string breaks_words(const std::vector<PriceBreak>& breaks) {
  std::vector<std::string> parts;
  for (const auto& step : breaks) {
    parts.push_back(
        say("{} from {}", amount_words(step.unit_cost), number_words(step.from_quantity)));
  }
  return parts.empty() ? said("none") : list_words(parts);
}

std::string doubt_words(PriceDoubt doubt, const PriceChange& change) {
  const int pack = std::max(change.before.pack_size, change.after.pack_size);
  switch (doubt) {
    case PriceDoubt::large_change:
      return said("the price changes by more than half");
    case PriceDoubt::per_pack:
      return say("it may be the price of a pack of {} and not of a piece", pack);
    case PriceDoubt::per_piece:
      return say("the old price may be that of a pack of {}", pack);
    case PriceDoubt::currency:
      return said("the currency is another");
    case PriceDoubt::zero:
      return said("it would cost nothing");
    default:
      return said("a price break is dearer than fewer pieces, or changes by more than half");
  }
}

TableRow new_row(std::string standing, std::string item, std::string what, bool strong) {
  TableRow row;
  row.strong = strong;
  row.cells = {{std::move(standing), std::nullopt},
               {std::move(item), std::nullopt},
               {std::move(what), std::nullopt},
               {"", std::nullopt}};
  return row;
}

std::string number_of(const supply::PriceRow& row) {
  if (!row.supplier_item.empty()) return row.supplier_item;
  return row.item_code.empty() ? row.gtin : row.item_code;
}

TableRow change_row(const PriceChange& change) {
  const auto doubts = price_doubts(change);
  const bool doubtful = !doubts.empty();
  auto row =
      new_row(doubtful ? said("Doubtful: look at it")
                       : (change.changes_item() ? said("Changes") : said("Worded otherwise")),
              change.before.code.text,
              capitalised(fmt::format("{}", fmt::join(price_changes(change), "; "))), doubtful);
  row.cells[3].text = capitalised(list_words(doubts));
  return row;
}

std::string unknown_words(const supply::PriceRow& row) {
  return fmt::format("{}{}", row.description.empty() ? said("no description") : row.description,
                     row.unit_cost ? fmt::format(", {}", amount_words(*row.unit_cost)) : "");
}

}  // namespace

std::vector<std::string> price_changes(const PriceChange& change) {
  const auto& [before, after] = std::pair<const Item&, const Item&>{change.before, change.after};
  std::vector<std::string> parts;
  if (before.unit_cost != after.unit_cost) {
    parts.push_back(
        say("unit cost {} to {}", cost_words(before.unit_cost), cost_words(after.unit_cost)) +
        percent_words(before.unit_cost, after.unit_cost));
  }
  if (before.price_breaks != after.price_breaks) {
    parts.push_back(say("price breaks {} to {}", breaks_words(before.price_breaks),
                        breaks_words(after.price_breaks)));
  }
  if (before.pack_size != after.pack_size) {
    parts.push_back(
        say("pack size {} to {}", number_words(before.pack_size), number_words(after.pack_size)));
  }
  if (before.min_order != after.min_order) {
    parts.push_back(say("minimum order {} to {}", number_words(before.min_order),
                        number_words(after.min_order)));
  }
  if (before.lead_days != after.lead_days) {
    parts.push_back(
        say("lead days {} to {}", days_words(before.lead_days), days_words(after.lead_days)));
  }
  if (before.description != after.description) {
    parts.push_back(say("description '{}' to '{}'", before.description, after.description));
  } else if (!change.other_description.empty()) {
    parts.push_back(say("the list calls it '{}'", change.other_description));
  }
  if (change.keeps_price_breaks) {
    parts.push_back(
        say("the list gives no price breaks, so {} stay", breaks_words(before.price_breaks)));
  }
  return parts;
}

std::vector<std::string> price_doubts(const PriceChange& change) {
  std::vector<std::string> parts;
  for (const auto doubt : change.doubts) parts.push_back(doubt_words(doubt, change));
  return parts;
}

std::string price_doubt_key(PriceDoubt doubt) {
  static constexpr std::array<const char*, 6> keys{"large_change", "per_pack", "per_piece",
                                                   "currency",     "zero",     "price_break"};
  return keys.at(static_cast<std::size_t>(doubt));
}

std::string price_line(const PriceChange& change) {
  auto text =
      fmt::format("{}: {}.", change.before.code.text, fmt::join(price_changes(change), "; "));
  if (const auto doubts = price_doubts(change); !doubts.empty()) {
    text += fmt::format(" {}", say("Look at it: {}.", list_words(doubts)));
  }
  return text;
}

std::string refused_price_line(const supply::RefusedPriceRow& refused) {
  return refused.field.empty() ? say("Row {} {}.", refused.row, refused.reason)
                               : say("Row {}, {}: {}.", refused.row, refused.field, refused.reason);
}

std::string price_summary(const PriceListOutcome& outcome) {
  const auto& found = outcome.found;
  int changing = 0;
  int doubtful = 0;
  for (const auto& change : found.changes) {
    changing += change.changes_item() ? 1 : 0;
    doubtful += change.doubts.empty() ? 0 : 1;
  }
  auto text =
      say("{}: {}, {} doubtful; {} as before; {} not in the catalogue; {} not on the list; {}.",
          outcome.file, count_words(changing, "item changes", "items change"),
          number_words(doubtful), number_words(found.unchanged),
          number_words(std::ssize(found.unknown)), number_words(std::ssize(found.missing)),
          count_words(std::ssize(found.refused), "row refused", "rows refused"));
  if (outcome.written > 0) {
    text += fmt::format(
        " {}", say_n("{} item was written.", "{} items were written.",
                     static_cast<unsigned long>(outcome.written), number_words(outcome.written)));
  }
  if (outcome.held_back > 0) {
    text += fmt::format(
        " {}",
        say_n("{} item was held back as doubtful.", "{} items were held back as doubtful.",
              static_cast<unsigned long>(outcome.held_back), number_words(outcome.held_back)));
  }
  return text;
}

std::vector<std::string> price_lines(const PriceListOutcome& outcome) {
  const auto& found = outcome.found;
  std::vector<std::string> lines;
  for (const auto& change : found.changes) lines.push_back(price_line(change));
  for (const auto& row : found.unknown) {
    lines.push_back(
        say("Row {}, {}: not in the catalogue ({}).", row.row, number_of(row), unknown_words(row)));
  }
  for (const auto& item : found.missing) {
    lines.push_back(say("{}: not on the list.", item.code.text));
  }
  for (const auto& refused : found.refused) lines.push_back(refused_price_line(refused));
  if (!outcome.ignored.empty()) {
    lines.push_back(say("Headings that were not used: {}.", fmt::join(outcome.ignored, ", ")));
  }
  lines.push_back(price_summary(outcome));
  return lines;
}

Table price_table(const PriceListOutcome& outcome) {
  const auto& found = outcome.found;
  Table table{{{said("Standing"), 20, Align::left, ""},
               {said("Item"), 14, Align::left, ""},
               {said("What changes"), 50, Align::left, "", 3},
               {said("Doubt"), 34, Align::left, said("Why a person has to look at it"), 2}}};
  std::vector<TableRow> rows;
  for (const bool doubtful : {true, false}) {
    for (const auto& change : found.changes) {
      if (!change.doubts.empty() == doubtful) rows.push_back(change_row(change));
    }
  }
  for (const auto& refused : found.refused) {
    rows.push_back(new_row(say("Row {} refused", refused.row), refused.field,
                           capitalised(refused.reason), true));
  }
  for (const auto& row : found.unknown) {
    rows.push_back(
        new_row(said("Not in the catalogue"), number_of(row), unknown_words(row), false));
  }
  for (const auto& item : found.missing) {
    rows.push_back(new_row(said("Not on the list"), item.code.text, item.description, false));
  }
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].id = std::to_string(i);
  table.fill(std::move(rows));
  return table;
}

}  // namespace sparewell::desk
