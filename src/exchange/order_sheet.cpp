#include "exchange/order_sheet.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

constexpr std::array<const char*, 11> headings{to_say("No."),        to_say("Supplier's part no."),
                                               to_say("Our code"),   to_say("Description"),
                                               to_say("Size"),       to_say("Side"),
                                               to_say("Quantity"),   to_say("Unit cost"),
                                               to_say("Line total"), to_say("Currency"),
                                               to_say("For patient")};
constexpr double widest_column = 48;
// Labels and values above the lines stand in the first two columns.
constexpr std::size_t head_width = 14;

std::string patients_text(const PurchaseOrderLine& line) {
  std::string joined;
  for (const auto& [patient, side] : line.for_patients) {
    if (!joined.empty()) joined += ", ";
    joined += patient.text;
    if (side) joined += fmt::format(" {}", shown_word(*side));
  }
  return joined;
}

/// The side for which the pieces are, where that is known of all of them; "" for stock.
std::string side_text(const PurchaseOrderLine& line) {
  std::array<int, 2> pieces{};
  for (const PieceForPatient& piece : line.for_patients) {
    if (!piece.side) return {};
    ++pieces[static_cast<std::size_t>(*piece.side)];
  }
  const auto [left, right] = pieces;
  if (left == 0 && right == 0) return {};
  if (left == 0) return shown_word(Side::right);
  if (right == 0) return shown_word(Side::left);
  return say("{} left, {} right", left, right);
}

/// An ampersand begins a command in headers and footers; two stand for one.
std::string footer_text(std::string_view text) {
  std::string made;
  for (const char c : text) {
    made += c;
    if (c == '&') made += c;
  }
  return made;
}

}  // namespace

std::string order_title(const PurchaseOrder& order) {
  if (order.number.empty()) return said("Not ordered");
  return say("Purchase order {}", order.number);
}

std::string revision_words(const PurchaseOrder& order) {
  if (order.revision < 2) return say("Revision {}", order.revision);
  return say("Revision {}, replaces revision {}", order.revision, order.revision - 1);
}

void OrderSheet::write() {
  write_head();
  write_headings();
  for (const PurchaseOrderLine& line : order_.lines) write_line(line);
  write_totals();
  set_widths();
  set_page();
}

void OrderSheet::head_line(const std::string& label, const std::string& text) {
  file_.text(row_, 0, label, formats_.bold);
  if (!text.empty()) file_.text(row_, 1, text);
  ++row_;
}

void OrderSheet::head_date(const std::string& label, Date date) {
  file_.text(row_, 0, label, formats_.bold);
  file_.date(row_, 1, date, formats_.date);
  ++row_;
}

void OrderSheet::write_head() {
  file_.text(row_++, 0, order_title(order_), formats_.title);
  if (order_.number.empty()) {
    head_line(said("Reason"), said("The catalogue names no known supplier for these items."));
    head_date(said("Date"), order_.ordered_on);
  } else {
    head_line(said("Order number"), order_.number);
    if (order_.revision > 0) head_line(said("Revision"), revision_words(order_));
    head_date(said("Date"), order_.ordered_on);
    if (order_.expected_by) head_date(said("Expected by"), *order_.expected_by);
    head_line(said("Supplier"), order_.supplier.name.text);
    if (!order_.supplier.account.empty()) head_line(said("Our account"), order_.supplier.account);
    write_address();
  }
  ++row_;
}

void OrderSheet::write_address() {
  std::string label = said("Ship to");
  if (!order_.clinic_name.empty()) {
    head_line(label, order_.clinic_name);
    label.clear();
  }
  for (std::size_t at = 0; at < order_.ship_to.size();) {
    const std::size_t end = std::min(order_.ship_to.find('\n', at), order_.ship_to.size());
    head_line(label, order_.ship_to.substr(at, end - at));
    label.clear();
    at = end + 1;
  }
}

void OrderSheet::write_headings() {
  static_assert(headings.size() == column_count);
  heading_row_ = row_++;
  for (lxw_col_t column = 0; column < column_count; ++column) {
    const bool numbers = column >= quantity && column <= line_total;
    put(heading_row_, column, said(headings[column]),
        numbers ? formats_.number_heading : formats_.heading);
  }
  worksheet_freeze_panes(file_.sheet(), row_, 0);
}

void OrderSheet::write_line(const PurchaseOrderLine& line) {
  lxw_format* plain = formats_.wrapped;
  file_.number(row_, number, row_ - heading_row_, formats_.counted);
  put(row_, supplier_item, line.supplier_item, plain);
  put(row_, item, line.item.text, plain);
  put(row_, description, line.description, plain);
  put(row_, size, line.size_label, plain);
  put(row_, side, side_text(line), plain);
  file_.number(row_, quantity, line.quantity, plain);
  put(row_, for_patients, patients_text(line), plain);
  if (line.unit_cost) write_cost(*line.unit_cost, line.quantity);
  ++row_;
}

void OrderSheet::write_cost(const Money& each, int pieces) {
  const Money total = each * pieces;
  lxw_format* as_money = formats_.money(each.currency, false);
  file_.number(row_, unit_cost, each.major(), as_money);
  file_.formula(row_, line_total, fmt::format("=G{0}*H{0}", row_ + 1), total.major(), as_money);
  put(row_, currency, each.currency.code, formats_.after_number);
  widen(unit_cost, text(each).size() + 4);
  const auto [entry, first] = totals_.try_emplace(each.currency, total);
  if (!first) entry->second = entry->second + total;
}

void OrderSheet::write_totals() {
  // Formulas count rows from 1.
  const lxw_row_t first = heading_row_ + 2;
  const lxw_row_t last = row_;
  const auto unknown = std::ranges::count_if(
      order_.lines, [](const PurchaseOrderLine& line) { return !line.unit_cost; });
  for (const auto& [of, total] : totals_) {
    const std::string sum = totals_.size() == 1 ? fmt::format("=SUM(I{}:I{})", first, last)
                                                : fmt::format("=SUMIF(J{0}:J{1},\"{2}\",I{0}:I{1})",
                                                              first, last, of.code);
    file_.text(row_, description, unknown == 0 ? said("Total") : said("Total of known costs"),
               formats_.bold);
    file_.formula(row_, line_total, sum, total.major(), formats_.money(of, true));
    file_.text(row_, currency, of.code, formats_.after_number);
    widen(line_total, text(total).size() + 6);
    ++row_;
  }
  if (unknown > 0) write_unknown_costs(unknown);
}

void OrderSheet::write_unknown_costs(long unknown) {
  const auto sentence = say_n("{} line has no known cost; please confirm its price.",
                              "{} lines have no known cost; please confirm their prices.",
                              static_cast<unsigned long>(unknown), unknown);
  file_.text(row_++, description, sentence);
}

void OrderSheet::put(lxw_row_t row, lxw_col_t column, const std::string& text, lxw_format* format) {
  file_.text(row, column, text, format);
  widen(column, text.size() + 2);
}

void OrderSheet::widen(lxw_col_t column, std::size_t characters) {
  widths_[column] = std::max(widths_[column], static_cast<double>(characters));
}

void OrderSheet::set_widths() {
  widen(number, head_width);
  widen(supplier_item, head_width);
  for (lxw_col_t column = 0; column < column_count; ++column) {
    file_.column_width(column, std::min(widths_[column], widest_column));
  }
}

void OrderSheet::set_page() {
  worksheet_set_landscape(file_.sheet());
  worksheet_fit_to_pages(file_.sheet(), 1, 0);
  file_.check(worksheet_repeat_rows(file_.sheet(), heading_row_, heading_row_));
  const auto footer = say("&L{}&RPage &P of &N", footer_text(order_title(order_)));
  file_.check(worksheet_set_footer(file_.sheet(), footer.c_str()));
}

}  // namespace sparewell::exchange
