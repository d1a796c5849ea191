#include "desk/billing/reports.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "billing/supplier_variances.hpp"
#include "billing/unbilled.hpp"
#include "clinic/say.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/billing/month_words.hpp"
#include "desk/billing/report_cells.hpp"
#include "desk/papers/list_cells.hpp"

namespace sparewell::desk {
namespace {

using exchange::ListFormat;
using exchange::ListRow;
using exchange::ListSheet;
using exchange::ListTotal;

std::string side_words(const std::optional<Side>& side) {
  return side ? shown_word(*side) : std::string{};
}

std::optional<Currency> currency_of(const std::optional<Money>& money) {
  return money ? std::optional{money->currency} : std::nullopt;
}

std::vector<billing::BillingFinding> unsettled(const Books& books) {
  std::vector<billing::BillingFinding> list;
  for (const auto& item : books.items) {
    if (item.state != billing::WorkState::settled) list.push_back(item.finding);
  }
  return list;
}

constexpr auto settled_left_out = to_say("What was answered and settled is left out.");

void say_charge_unknown(ListSheet& sheet, long long rows) {
  if (rows == 0) return;
  sheet.closing.push_back(say_n("{} row has no known charge and is not in the totals.",
                                "{} rows have no known charge and are not in the totals.",
                                static_cast<unsigned long>(rows), number_words(rows)));
}

ListSheet unbilled_months(const std::vector<billing::BillingFinding>& findings, Date today) {
  auto sheet =
      report_sheet(said("By month"), said("Handed out and not billed, by month of issue"), today,
                   {{said("Month")},
                    {said("Payer")},
                    {said("Findings"), ListFormat::whole},
                    {said("Pieces"), ListFormat::whole},
                    {said("Expected charge"), ListFormat::money},
                    {said("Currency")},
                    {said("Remark")}});
  sheet.total = ListTotal{said("Total"), 0, 4, 5};
  long long unknown = 0;
  for (const auto& month : billing::unbilled_by_month(findings)) {
    const bool known = month.currency.has_value();
    if (!known) ++unknown;
    sheet.rows.push_back({{month_key(month.month), payer_words(month.payer),
                           pieces_cell(month.findings), pieces_cell(month.pieces),
                           known ? exchange::ListCell{month.expected} : exchange::ListCell{},
                           currency_cell(month.currency),
                           std::string{known ? "" : said("The charge to expect is not known")}},
                          false});
  }
  say_charge_unknown(sheet, unknown);
  sheet.closing.emplace_back(said(settled_left_out));
  return sheet;
}

ListSheet unbilled_parts(const std::vector<billing::BillingFinding>& findings, Date today) {
  auto sheet = report_sheet(said("Parts"), said("Handed out and not billed, part by part"), today,
                            {{said("Issued"), ListFormat::date},
                             {said("Patient")},
                             {said("Side")},
                             {said("Payer")},
                             {said("Item")},
                             {said("Code")},
                             {said("Pieces"), ListFormat::whole},
                             {said("Expected charge"), ListFormat::money},
                             {said("Currency")},
                             {said("Likely cause")}});
  sheet.total = ListTotal{said("Total"), 1, 7, 8};
  long long unknown = 0;
  for (const auto& found : findings) {
    if (!billing::is_unbilled(found)) continue;
    if (!found.money) ++unknown;
    sheet.rows.push_back(
        {{found.since, found.patient.text, side_words(found.side), payer_words(found.payer),
          found.item.text, found.code, pieces_cell(found.quantity), money_cell(found.money),
          currency_cell(currency_of(found.money)), cause_words(found)},
         false});
  }
  std::ranges::stable_sort(sheet.rows, {},
                           [](const ListRow& row) { return std::get<Date>(row.cells.front()); });
  say_charge_unknown(sheet, unknown);
  return sheet;
}

}  // namespace

exchange::ListWorkbook unbilled_report(const Clinic& clinic, const Books& books, Date today) {
  const auto findings = unsettled(books);
  return {said("Handed out and not billed"),
          clinic.settings.name,
          today,
          {unbilled_months(findings, today), unbilled_parts(findings, today)}};
}

exchange::ListWorkbook supplier_report(const Clinic& clinic, const Books& books, Date today) {
  enum SupplierColumn : std::size_t {
    price = 3,
    not_invoiced,
    not_received,
    freight,
    in_all,
    currency
  };
  auto sheet =
      report_sheet(said("Suppliers"), said("Suppliers' invoices beside orders and receipts"), today,
                   {{said("Supplier")},
                    {said("Month")},
                    {said("Findings"), ListFormat::whole},
                    {said("Prices"), ListFormat::money},
                    {said("Received, not invoiced"), ListFormat::money},
                    {said("Invoiced, not received"), ListFormat::money},
                    {said("Freight"), ListFormat::money},
                    {said("In all"), ListFormat::money},
                    {said("Currency")}});
  sheet.total = ListTotal{said("Total"), 0, in_all, currency};
  const auto variances = billing::supplier_variances(books.suppliers.findings);
  for (const auto& row : variances.rows) {
    sheet.rows.push_back(
        {{row.supplier.text, month_key(row.month), pieces_cell(row.findings), row.price,
          row.not_invoiced, row.not_received, row.freight,
          exchange::Sum{{price, not_invoiced, not_received, freight}}, row.currency.code},
         false});
  }
  sheet.closing.emplace_back(said(
      "Below zero: charged too much, charged without having come, or still to be charged. Above "
      "zero: charged less than agreed."));
  if (variances.without_sum > 0) {
    sheet.closing.push_back(say_n("{} finding has no known sum and is not in the table.",
                                  "{} findings have no known sum and are not in the table.",
                                  static_cast<unsigned long>(variances.without_sum),
                                  number_words(variances.without_sum)));
  }
  return {said("Supplier variances"), clinic.settings.name, today, {std::move(sheet)}};
}

std::vector<WrittenReport> write_billing_reports(const Clinic& clinic, const Books& books,
                                                 Date today, const std::filesystem::path& folder) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    throw std::runtime_error{say("The folder {} cannot be made: {}. Name another one.",
                                 folder.string(), error.message())};
  }
  const std::array<std::pair<const char*, exchange::ListWorkbook>, 4> reports{{
      {"unbilled.xlsx", unbilled_report(clinic, books, today)},
      {"findings.xlsx", findings_report(clinic, books, today)},
      {"margin.xlsx", margin_report(clinic, books, today)},
      {"supplier-variances.xlsx", supplier_report(clinic, books, today)},
  }};
  std::vector<WrittenReport> written;
  for (const auto& [name, list] : reports) {
    exchange::write_list_workbook(list, folder / name);
    written.push_back({list.title, folder / name, list.sheets.front().rows.size()});
  }
  return written;
}

}  // namespace sparewell::desk
