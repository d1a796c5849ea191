#include "desk/suppliers_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/supplier_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::ExpectedLine;
using supply::SupplierRecord;

std::vector<Column> supplier_columns() {
  return {{said("Supplier"), 22, Align::left, "", 2},
          {said("Keeps its days"), 20, Align::left,
           said("Late: later than quoted by more than chance explains"), 1},
          {said("Days taken"), 11, Align::right,
           said("Mean days from order to last receipt, last two years")},
          {said("Days quoted"), 11, Align::right,
           said("Mean of what the catalogue quotes for the same lines")},
          {said("Received"), 9, Align::right,
           said("Order lines received in full in the last two years")},
          {said("Late"), 7, Align::right, said("Of these, lines that came after the quoted day")},
          {said("Nine in ten"), 18, Align::left,
           said("How late nine in ten of the lines were at most")},
          {said("Open"), 7, Align::right, said("Order lines with pieces still to come")},
          {said("Overdue"), 8, Align::right, said("Of these, lines whose quoted day has passed")}};
}

std::vector<Column> line_columns() {
  return {{said("Order"), 14, Align::left, said("The order's number")},
          {said("Item"), 30, Align::left, "", 2},
          {said("Ordered"), 12, Align::left, ""},
          {said("Expected"), 12, Align::left, said("Promised, or else quoted")},
          {said("Overdue"), 12, Align::left, said("Days since it was expected")},
          {said("To come"), 8, Align::right, said("Pieces still to come")}};
}

Cell days_cell(double days, int receipts) {
  if (receipts == 0) return {"", std::nullopt};
  return {say("{:.1f}", days), days};
}

std::string nine_in_ten_words(const SupplierRecord& record) {
  if (record.receipts == 0) return "";
  const int days = record.nine_in_ten_days_late;
  return days > 0 ? say("{} late", count_words(days, "day", "days"))
                  : std::string{said("on the day or before")};
}

TableRow supplier_row(const SupplierRecord& record) {
  TableRow row;
  row.id = record.supplier.text;
  row.cells = {{record.supplier.text, {}},
               {supplier_standing(record), {}},
               days_cell(record.taken_days, record.receipts),
               days_cell(record.quoted_days, record.receipts),
               count_cell(record.receipts),
               count_cell(record.late),
               {nine_in_ten_words(record), static_cast<double>(record.nine_in_ten_days_late)},
               count_cell(record.open_lines),
               count_cell(record.overdue_lines)};
  row.strong = record.runs_late;
  return row;
}

TableRow line_row(const ExpectedLine& expected, const Day& day, std::size_t position) {
  const OrderLine& line = expected.line;
  const Item* item = day.index().item(line.item);
  TableRow row;
  row.id = fmt::format("{}", position);
  row.cells = {
      {line.order_ref, {}},
      {item ? fmt::format("{}  {}", line.item.text, item_words(*item)) : line.item.text, {}},
      date_cell(line.ordered_on, ""),
      date_cell(expected.expected_on, ""),
      {expected.overdue_days > 0 ? count_words(expected.overdue_days, "day", "days")
                                 : std::string{},
       static_cast<double>(expected.overdue_days)},
      count_cell(line.outstanding())};
  row.strong = expected.overdue_days > 0;
  return row;
}

}  // namespace

SuppliersPage::SuppliersPage() : suppliers_{supplier_columns()}, lines_{line_columns()} {}

void SuppliersPage::show(DayPtr day) {
  day_ = std::move(day);
  records_ = supply::supplier_records(day_->clinic(), day_->today());
  expected_ = supply::still_to_come(day_->clinic(), {}, day_->today());
  std::vector<TableRow> rows;
  for (const auto& record : records_) rows.push_back(supplier_row(record));
  suppliers_.fill(std::move(rows));
  choose(chosen_);
}

void SuppliersPage::choose(const std::string& supplier) {
  chosen_ = supplier;
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < expected_.size(); ++i) {
    if (expected_[i].line.supplier.text != supplier) continue;
    rows.push_back(line_row(expected_[i], *day_, i));
  }
  lines_.fill(std::move(rows));
}

std::string SuppliersPage::summary() const {
  if (records_.empty()) {
    return said(
        "Nothing was received from a supplier in the last two years, and nothing is on order.");
  }
  const auto late = std::ranges::count_if(records_, &SupplierRecord::runs_late);
  if (late == 0) return said("No supplier is later than it quotes by more than chance explains.");
  return say_n(
      "{} supplier is later than quoted by more than chance explains. Orders are proposed by the "
      "days that a supplier takes, not by those that it quotes.",
      "{} suppliers are later than quoted by more than chance explains. Orders are proposed by the "
      "days that a supplier takes, not by those that it quotes.",
      static_cast<unsigned long>(late), number_words(late));
}

std::string SuppliersPage::words() const {
  const auto found = std::ranges::find_if(
      records_, [&](const SupplierRecord& record) { return record.supplier.text == chosen_; });
  if (found == records_.end()) return "";
  return fmt::format("{}: {}", chosen_, supplier_words(*found));
}

std::string SuppliersPage::grounds() {
  return say(
      "Counted are order lines that were received in full in the last two years; a supplier needs "
      "{} of them to be judged. Quoted days are those of the catalogue.",
      supply::least_receipts);
}

std::optional<SuppliersPage::OrderOf> SuppliersPage::order_of(const std::string& line) const {
  if (!lines_.position_of(line)) return std::nullopt;
  const auto& chosen = expected_[static_cast<std::size_t>(std::stoull(line))].line;
  return OrderOf{chosen.supplier, chosen.order_ref};
}

}  // namespace sparewell::desk
