#include "desk/shelf_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Where the pieces in this state are counted.
int& counted(ShelfCount& count, LotState state) {
  switch (state) {
    case LotState::expired:
      return count.expired;
    case LotState::quarantined:
      return count.quarantined;
    case LotState::in_transit:
      return count.in_transit;
    case LotState::on_loan:
      return count.on_loan;
    case LotState::at_supplier:
      return count.at_supplier;
    default:
      return count.usable;
  }
}

void count_level(ShelfCount& count, const StockLevel& level, const Clinic& clinic, Date today) {
  const auto state = lot_state(level, clinic.places, today);
  if (state != LotState::usable && state != LotState::soon) {
    counted(count, state) += level.quantity;
    return;
  }
  count.usable += level.quantity;
  if (state == LotState::soon) count.soon += level.quantity;
  const auto use_by = level.lot.use_by;
  if (use_by && (!count.use_by || *use_by < *count.use_by)) count.use_by = use_by;
}

std::string unusable_words(const ShelfCount& count) {
  std::vector<std::string> parts;
  if (count.expired > 0) {
    const auto expired = static_cast<unsigned long>(count.expired);
    parts.push_back(say_n("{} expired", "{} expired", expired, count.expired));
  }
  if (count.quarantined > 0) parts.push_back(say("{} in quarantine", count.quarantined));
  if (count.in_transit > 0) parts.push_back(say("{} in transit", count.in_transit));
  if (count.on_loan > 0) parts.push_back(say("{} on loan", count.on_loan));
  if (count.at_supplier > 0) parts.push_back(say("{} at supplier", count.at_supplier));
  if (count.soon > 0) parts.push_back(say("{} to be used soon", count.soon));
  return list_words(parts);
}

/// The word for how an item stands, and whether it is low.
struct Standing {
  std::string word;
  bool low = false;
};

Standing standing(const Day& day, const Item& item, const ShelfCount& count,
                  const supply::ProposalLine* line) {
  if (!day.worked_out()) return {said("Being worked out"), false};
  if (line) return {count.usable == 0 ? said("Out: order") : said("Low: order"), true};
  if (!item.stocked) return {said("Ordered per patient"), false};
  if (count.usable + count.in_transit < count.reserved) {
    return {count.on_order > 0 ? said("Short, on order") : said("Short"), true};
  }
  if (count.usable == 0 && count.in_transit > 0) return {said("Out, in transit"), true};
  if (count.usable == 0 && count.on_order > 0) return {said("Out, on order"), true};
  if (count.usable == 0) return {said("None needed"), false};
  return {said("Enough"), false};
}

TableRow shelf_row(const Day& day, const Item& item, const ShelfCount& count,
                   const std::string& lots) {
  const auto* line = day.proposed(item.code);
  const auto how = standing(day, item, count, line);
  TableRow row;
  row.id = item.code.text;
  row.strong = how.low;
  row.marks = how.low ? ShelfPage::is_low : 0;
  row.cells = {{how.word, std::nullopt},
               {item.code.text, std::nullopt},
               {item_words(item), std::nullopt},
               count_cell(count.usable),
               count_cell(count.on_order),
               count_cell(count.reserved),
               line ? count_cell(line->target) : Cell{"", std::nullopt},
               {unusable_words(count), static_cast<double>(count.expired + count.quarantined)},
               date_cell(count.use_by, ""),
               {item.supplier.text, std::nullopt}};
  row.search =
      folded(fmt::format("{} {} {} {} {} {} {}", how.word, item.code.text, item_words(item),
                         kind_words(item), shown_word(item.material), item.supplier.text, lots));
  return row;
}

std::string lot_row_id(const StockLevel& level) {
  return fmt::format("{}\n{}\n{}", level.lot.lot, level.place, date_words(level.lot.use_by, ""));
}

TableRow lot_row(const StockLevel& level, const Day& day) {
  const auto state = lot_state(level, day.clinic().places, day.today());
  TableRow row;
  row.id = lot_row_id(level);
  row.strong = state != LotState::usable;
  row.cells = {{level.lot.lot.empty() ? said("no lot recorded") : level.lot.lot, std::nullopt},
               {shown_place(level.place), std::nullopt},
               count_cell(level.quantity),
               date_cell(level.lot.use_by, said_of("date", "none")),
               {capitalised(lot_state_words(state)), std::nullopt}};
  return row;
}

TableRow open_order_row(const OrderLine& line, Date today) {
  const auto age = days_between(line.ordered_on, today);
  TableRow row;
  row.id = line.order_ref + "\n" + std::to_string(line.copy);
  row.cells = {{line.order_ref, std::nullopt}, {line.supplier.text, std::nullopt},
               date_cell(line.ordered_on, ""), {say("{} ago", span_words(age)), age},
               count_cell(line.quantity),      count_cell(line.outstanding())};
  return row;
}

std::string summary_words(const Item& item, const ShelfCount& count,
                          const supply::ProposalLine* line) {
  auto text =
      say("{} usable, {} on order, {} reserved.", count.usable, count.on_order, count.reserved);
  ShelfCount not_usable = count;
  not_usable.soon = 0;
  if (const auto words = unusable_words(not_usable); !words.empty()) {
    text += say(" Not to be handed out: {}.", words);
  }
  if (line) {
    text += say(" Target {}: order {} (see Order today).", line->target, line->quantity);
  } else if (!item.stocked) {
    text += said(" Not kept in stock: it is ordered for a named patient.");
  } else {
    text += said(" Nothing is to be ordered today.");
  }
  return text;
}

}  // namespace

LotState lot_state(const StockLevel& level, std::span<const Place> places, Date today) {
  const auto sort = sort_of_place(places, level.place);
  if (sort == PlaceSort::quarantine) return LotState::quarantined;
  if (sort == PlaceSort::on_loan) return LotState::on_loan;
  if (sort == PlaceSort::at_supplier) return LotState::at_supplier;
  if (level.lot.use_by && *level.lot.use_by < today) return LotState::expired;
  if (sort == PlaceSort::in_transit) return LotState::in_transit;
  if (!level.lot.use_by) return LotState::usable;
  return days_between(today, *level.lot.use_by) <= soon_days ? LotState::soon : LotState::usable;
}

std::string lot_state_words(LotState state) {
  switch (state) {
    case LotState::soon:
      return said("use soon");
    case LotState::expired:
      return said("expired: do not hand out");
    case LotState::quarantined:
      return said("in quarantine: do not hand out");
    case LotState::in_transit:
      return said("on its way");
    case LotState::on_loan:
      return said("on loan to a patient");
    case LotState::at_supplier:
      return said("sent back to the supplier");
    default:
      return said("usable");
  }
}

std::unordered_map<ItemCode, ShelfCount> shelf_counts(const Day& day) {
  std::unordered_map<ItemCode, ShelfCount> counts;
  const auto& clinic = day.clinic();
  for (const auto& item : clinic.items) counts[item.code];
  for (const auto& level : clinic.shelf) {
    count_level(counts[level.lot.item], level, clinic, day.today());
  };
  for (const auto& line : clinic.order_lines) counts[line.item].on_order += line.outstanding();
  for (const auto& reservation : clinic.reservations) {
    counts[reservation.item].reserved += reservation.quantity;
  }
  return counts;
}

ShelfPage::ShelfPage()
    : table_{
          {{said("Standing"), 19, Align::left, said("How the item stands against what is needed")},
           {said("Item"), 14, Align::left, said("The clinic's item code")},
           {said("Description"), 36, Align::left, "", 2},
           {said("On hand"), 9, Align::right,
            said("Usable pieces: not expired and not in quarantine")},
           {said("On order"), 9, Align::right,
            said("Ordered and still to come, back-orders included")},
           {said("Reserved"), 9, Align::right,
            said("Promised to patients, or booked for their visits")},
           {said("Target"), 8, Align::right, said("Order-up-to level, where an order is proposed")},
           {said("Not usable, or not for long"), 24, Align::left, "", 1},
           {said("First use-by"), 12, Align::left,
            said("The earliest use-by date of the usable pieces")},
           {said("Supplier"), 22, Align::left, "", 1}}} {}

void ShelfPage::show(DayPtr day) {
  day_ = std::move(day);
  const auto counts = shelf_counts(*day_);
  std::unordered_map<ItemCode, std::string> lots;
  for (const auto& level : day_->clinic().shelf) {
    lots[level.lot.item].append(level.lot.lot).append(" ");
  }
  std::vector<TableRow> rows;
  for (const auto& item : day_->clinic().items) {
    rows.push_back(shelf_row(*day_, item, counts.at(item.code), lots[item.code]));
  }
  // What is low comes first; otherwise the catalogue's order.
  std::ranges::stable_sort(rows, {}, [](const TableRow& row) { return !row.strong; });
  table_.fill(std::move(rows));
}

std::string ShelfPage::count_shown() const {
  const auto total = count_words(static_cast<long long>(table_.total()), "item", "items");
  if (table_.size() == table_.total()) return total;
  return say("{} of {}", table_.size(), total);
}

std::string ShelfPage::empty_words() const {
  if (!day_) return said("Open a clinic file to see its shelf.");
  if (table_.total() == 0)
    return said("The catalogue is empty. Import the clinic's folder (File menu).");
  return said("No item answers to what you asked for.");
}

ShelfDetail ShelfPage::detail(const std::string& code) const {
  ShelfDetail detail;
  const auto* item = day_ ? day_->index().item({code}) : nullptr;
  if (!item) return detail;
  detail.title = code + "  " + item_words(*item);
  detail.summary =
      day_->worked_out()
          ? summary_words(*item, shelf_counts(*day_).at(item->code), day_->proposed(item->code))
          : say("Being worked out: how much of it will be needed is not known yet.");
  for (const auto& level : day_->clinic().shelf) {
    if (level.lot.item == item->code) detail.lots.push_back(lot_row(level, *day_));
  }
  for (const auto& line : day_->clinic().order_lines) {
    if (line.item == item->code && line.outstanding() > 0) {
      detail.open_orders.push_back(open_order_row(line, day_->today()));
    }
  }
  return detail;
}

std::optional<StockLevel> ShelfPage::level(const std::string& item, const std::string& id) const {
  if (!day_) return std::nullopt;
  for (const auto& level : day_->clinic().shelf) {
    if (level.lot.item.text == item && lot_row_id(level) == id) return level;
  }
  return std::nullopt;
}

std::string ShelfPage::first_row_of(const std::string& item, const std::string& lot) const {
  if (lot.empty() || !day_) return "";
  for (const auto& level : day_->clinic().shelf) {
    if (level.lot.item.text == item && level.lot.lot == lot) return lot_row_id(level);
  }
  return "";
}

std::vector<Column> ShelfPage::lot_columns() {
  return {{said("Lot"), 14, Align::left, ""},
          {said("Place"), 16, Align::left, "", 1},
          {said("Pieces"), 8, Align::right, ""},
          {said("Use by"), 12, Align::left, ""},
          {said("State"), 30, Align::left, "", 1}};
}

std::vector<Column> ShelfPage::open_order_columns() {
  return {
      {said("Order"), 14, Align::left, ""},          {said("Supplier"), 20, Align::left, "", 1},
      {said("Ordered"), 12, Align::left, ""},        {said("Waiting"), 13, Align::right, ""},
      {said("Ordered pieces"), 8, Align::right, ""}, {said("Still to come"), 8, Align::right, ""}};
}

}  // namespace sparewell::desk
