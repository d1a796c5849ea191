#include "desk/order_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_reasons.hpp"
#include "desk/part_words.hpp"
#include "desk/supplier_totals.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::ProposalLine;

std::vector<Column> line_columns() {
  return {{said("Supplier"), 22, Align::left, "", 1},
          {said("Item"), 14, Align::left, said("The clinic's item code")},
          {said("Description"), 36, Align::left, "", 2},
          {said("Quantity"), 14, Align::right, said("Pieces to order, in whole packs")},
          {said("Cost"), 15, Align::right,
           said("Quantity times the price at this quantity, without freight")},
          {said("Order by"), 14, Align::left,
           said("The last day on which ordering keeps the service target")},
          {said("May run out"), 11, Align::right,
           said("Chance of running out before the next order could arrive, if this line is not "
                "ordered")},
          {said("Reason"), 30, Align::left, "", 1}};
}

std::vector<Column> total_columns() {
  return {{said("Supplier"), 22, Align::left, "", 2},
          {said("Goods"), 17, Align::right, said("Without freight")},
          {said("Lines"), 6, Align::right, ""},
          {said("Pieces"), 7, Align::right, ""},
          {said("Freight"), 20, Align::left, "", 1}};
}

std::string line_id(const ProposalLine& line) {
  return line.supplier.text + "\n" + line.item.text + "\n" + line.place;
}

TableRow line_row(const ProposalLine& line, const Day& day) {
  const auto* item = day.index().item(line.item);
  const auto description = item ? item_words(*item) : std::string{said("not in the catalogue")};
  TableRow row;
  row.id = line_id(line);
  row.cells = {{line.supplier.text, std::nullopt},
               {line.item.text, std::nullopt},
               {description, std::nullopt},
               count_cell(line.quantity),
               cost_cell(line.unit_cost, line.quantity),
               date_cell(line.order_by, ""),
               {chance_words(line.chance_short), line.chance_short},
               {short_reason(line), std::nullopt}};
  row.search = folded(line.supplier.text + " " + line.item.text + " " + description);
  for (const auto& need : line.reason.needs) {
    row.search += fmt::format(" {}", folded(patient_words(day, need.patient)));
  }
  return row;
}

/// A line beside today's: what its quantity is today, and what it would be.
TableRow changed_row(const ProposalLine& line, int today, int otherwise, const Day& day) {
  TableRow row = line_row(line, day);
  row.strong = today != otherwise;
  std::string words = number_words(otherwise);
  if (today != otherwise) {
    words = today == 0 ? say("{} (not today)", otherwise) : say("{} (today {})", otherwise, today);
  }
  row.cells[3] = {std::move(words), otherwise};
  row.cells[4] = cost_cell(line.unit_cost, otherwise);
  return row;
}

std::string freight_words(const SupplierTotal& total) {
  if (!total.freight) return said("not known");
  if (total.freight->minor == 0) return said("free");
  const auto text = amount_words(*total.freight);
  if (!total.short_of_free_freight) return text;
  return say("{}; free from {} more", text, amount_words(*total.short_of_free_freight));
}

std::string goods_words(const std::vector<Money>& goods, int without_price) {
  auto text = amounts_words(goods);
  if (without_price == 0) return text;
  return text.empty() ? said("no price") : text + " +";
}

std::vector<TableRow> total_rows(const std::vector<SupplierTotal>& totals) {
  std::vector<TableRow> rows;
  SupplierTotal all;
  for (const auto& total : totals) {
    rows.push_back({total.supplier.text,
                    {{total.supplier.text, std::nullopt},
                     {goods_words(total.goods, total.lines_without_price), std::nullopt},
                     count_cell(total.lines),
                     count_cell(total.pieces),
                     {freight_words(total), std::nullopt}},
                    "",
                    0,
                    false});
    all.lines += total.lines;
    all.pieces += total.pieces;
    all.lines_without_price += total.lines_without_price;
    for (const auto& amount : total.goods) add_amount(all.goods, amount);
  }
  if (totals.size() < 2) return rows;
  const std::vector<Money> first(all.goods.begin(), all.goods.begin() + !all.goods.empty());
  const auto unpriced = all.lines_without_price == 0
                            ? std::string{}
                            : say_n("{} line has no price", "{} lines have no price",
                                    static_cast<unsigned long>(all.lines_without_price),
                                    number_words(all.lines_without_price));
  rows.push_back({"all suppliers",
                  {{said("All suppliers"), std::nullopt},
                   {goods_words(first, all.lines_without_price), std::nullopt},
                   count_cell(all.lines),
                   count_cell(all.pieces),
                   {unpriced, std::nullopt}},
                  "",
                  0,
                  true});
  // Amounts of two currencies are never one sum: each further one has a row of its own.
  for (std::size_t i = 1; i < all.goods.size(); ++i) {
    const Cell blank{"", std::nullopt};
    const Cell amount{amount_words(all.goods[i]), std::nullopt};
    rows.push_back({"all suppliers, " + all.goods[i].currency.code,
                    {{said("and"), std::nullopt}, amount, blank, blank, blank},
                    "",
                    0,
                    true});
  }
  return rows;
}

std::optional<Date> soonest_order_day(const Day& day) {
  std::optional<Date> soonest;
  for (const auto& supplier : day.clinic().suppliers) {
    const auto next = next_order_day(supplier.order_days, day.today());
    if (!soonest || next < *soonest) soonest = next;
  }
  return soonest;
}

std::string headline_words(const Day& day) {
  const auto& proposal = day.assessment().proposal;
  const auto held = day.assessment().held.size();
  if (held > 0) {
    const auto lines = say_n("{} line must be ordered today", "{} lines must be ordered today",
                             proposal.size(), number_words(std::ssize(proposal)));
    return lines + say_n("; {} more is left out to keep to the budget.",
                         "; {} more are left out to keep to the budget.", held,
                         number_words(static_cast<long long>(held)));
  }
  if (proposal.empty()) {
    const auto next = soonest_order_day(day);
    if (!next) return said("Nothing is to be ordered today.");
    return say("Nothing is to be ordered today. The next order day is {}.", day_words(*next));
  }
  return say_n("{} line must be ordered today.", "{} lines must be ordered today.", proposal.size(),
               number_words(std::ssize(proposal)));
}

std::string wait_words(const ProposalLine& line) {
  return say(
      "Order today. If it waits until {}, the chance of running out before that order arrives is "
      "{}.",
      day_words(line.reason.next_order_day), chance_words(line.chance_short));
}

TableRow need_row(const supply::ExpectedNeed& need, const ProposalLine& line, const Day& day,
                  std::size_t number) {
  const auto& unit = day.clinic().units.at(need.unit);
  const auto* item = day.index().item(unit.item);
  TableRow row;
  row.id = std::to_string(number);
  row.cells = {
      {patient_words(day, need.patient), std::nullopt},
      {shown_word(need.side), std::nullopt},
      {chance_words(need.chance), need.chance},
      date_cell(need.early, said("not foreseen")),
      date_cell(need.median, said("not foreseen")),
      date_cell(line.reason.patient_ordered ? need.order_by : std::nullopt, said("from stock")),
      {say("{}, issued {}", item ? kind_words(*item) : unit.item.text, date_words(unit.issued_on)),
       static_cast<double>(unit.issued_on.time_since_epoch().count())}};
  return row;
}

}  // namespace

OrderPage::OrderPage() : lines_{line_columns()}, totals_{total_columns()} {}

void OrderPage::show(DayPtr day) {
  day_ = std::move(day);
  otherwise_.reset();
  fill_lines();
  totals_.fill(total_rows(supplier_totals(*day_)));
  headline_ = headline_words(*day_);
}

void OrderPage::show_otherwise(std::shared_ptr<const supply::DecidedOrders> orders) {
  otherwise_ = std::move(orders);
  if (day_) fill_lines();
}

void OrderPage::fill_lines() {
  const auto& today = day_->assessment().proposal;
  std::vector<TableRow> rows;
  if (!otherwise_) {
    for (const auto& line : today) rows.push_back(line_row(line, *day_));
    lines_.fill(std::move(rows));
    return;
  }
  const auto find = [](const std::vector<ProposalLine>& lines, const std::string& id) {
    const auto found = std::ranges::find(lines, id, line_id);
    return found == lines.end() ? nullptr : &*found;
  };
  const auto& otherwise = otherwise_->proposal.lines;
  for (const auto& line : otherwise) {
    const auto* usual = find(today, line_id(line));
    rows.push_back(changed_row(line, usual ? usual->quantity : 0, line.quantity, *day_));
  }
  for (const auto& line : today) {
    if (!find(otherwise, line_id(line))) {
      rows.push_back(changed_row(line, line.quantity, 0, *day_));
    }
  }
  // As today's lines stand, by supplier and item.
  std::ranges::sort(rows, {}, &TableRow::id);
  lines_.fill(std::move(rows));
}

const ProposalLine* OrderPage::line(const std::string& id) const {
  const auto& today = day_->assessment().proposal;
  if (otherwise_) {
    const auto& lines = otherwise_->proposal.lines;
    if (const auto found = std::ranges::find(lines, id, line_id); found != lines.end()) {
      return &*found;
    }
  }
  const auto found = std::ranges::find(today, id, line_id);
  return found == today.end() ? nullptr : &*found;
}

std::size_t OrderPage::held_back() const {
  if (!day_) return 0;
  return day_->assessment().held_needs.size() + day_->assessment().held.size();
}

std::string OrderPage::empty_words() const {
  if (!day_) return said("Open a clinic file to see what is to be ordered.");
  if (anything()) return said("No order line holds what you typed.");
  if (day_->clinic().items.empty()) {
    return said("The catalogue is empty. Import the clinic's folder to begin (File menu).");
  }
  return said(
      "Nothing is to be ordered today: every item reaches its target with what is on hand and "
      "on order.");
}

OrderDetail OrderPage::detail(const std::string& id) const {
  OrderDetail detail;
  if (!day_) return detail;
  const auto* line = this->line(id);
  if (line == nullptr) return detail;
  const auto* item = day_->index().item(line->item);
  detail.title = line->item.text + (item ? "  " + item_words(*item) : std::string{});
  detail.when = wait_words(*line);
  detail.why = why(*line, day_->clinic());
  for (const auto& need : line->reason.needs) {
    detail.needs.push_back(need_row(need, *line, *day_, detail.needs.size()));
  }
  return detail;
}

std::string OrderPage::line_of(const ItemCode& item) const {
  if (!day_) return "";
  const auto& proposal = day_->assessment().proposal;
  const auto line = std::ranges::find(proposal, item, &ProposalLine::item);
  return line == proposal.end() ? std::string{} : line_id(*line);
}

std::vector<Column> OrderPage::need_columns() {
  return {{said("Patient"), 24, Align::left, "", 2},
          {said("Side"), 6, Align::left, ""},
          {said("Chance"), 9, Align::right,
           said("Of wearing out before an order on the next day could arrive")},
          {said("Worn out, early"), 14, Align::left,
           said("One part in ten like it is worn out by then")},
          {said("Worn out, middle"), 14, Align::left,
           said("Half of the parts like it are worn out by then")},
          {said("Order by"), 12, Align::left, said("For parts that are ordered for the patient")},
          {said("Part in use"), 24, Align::left, "", 1}};
}

}  // namespace sparewell::desk
