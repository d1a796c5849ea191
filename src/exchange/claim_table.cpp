#include "exchange/claim_table.hpp"

#include <algorithm>
#include <set>

#include "clinic/say.hpp"
#include "exchange/sheet/sheet_values.hpp"
#include "exchange/x12/values.hpp"

namespace sparewell::exchange {
namespace {

std::vector<std::string> modifiers_in(std::string_view text) {
  std::vector<std::string> made;
  while (!text.empty()) {
    const auto end = std::min(text.find_first_of(";,: "), text.size());
    if (end > 0) made.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return made;
}

/// The words of claims.csv, or what the frequency codes 1, 7 and 8 mean.
std::string submission_word(std::string_view text) {
  if (text == "1") return std::string{word(Submission::original)};
  if (text == "7") return std::string{word(Submission::replacement)};
  if (text == "8") return std::string{word(Submission::reversal)};
  return std::string{text};
}

/// Turns what is below zero into a line that takes an earlier one back.
void take_back(RowCells& row) {
  auto& quantity = row.cells["quantity"];
  auto& charge = row.cells["charge"];
  auto& submission = row.cells["submission"];
  const bool reverses = quantity.starts_with('-') || charge.starts_with('-') ||
                        submission == word(Submission::reversal);
  if (!reverses) return;
  submission = word(Submission::reversal);
  if (quantity.starts_with('-')) quantity.erase(0, 1);
  const bool nothing = charge.find_first_not_of("0.") == std::string::npos;
  if (!charge.starts_with('-') && !nothing) charge.insert(0, 1, '-');
}

}  // namespace

void RowCells::keep(const char* field, std::string value, Reason reason) {
  cells[field] = std::move(value);
  if (!reason.empty() && !fault) fault = Fault{field, std::move(reason)};
}

void RowCells::text(const char* field) {
  const auto& cell = table_.cell(row_, field);
  keep(
      field, std::string{sheet_text(cell)},
      cell.kind == SheetCell::Kind::error ? said("could not be calculated there; correct it") : "");
}

void RowCells::date(const char* field) {
  const auto& cell = table_.cell(row_, field);
  if (sheet_text(cell).empty()) return text(field);
  Date day;
  auto reason = read_sheet_date(cell, table_.format(), day);
  auto value = reason.empty() ? iso_text(day) : std::string{sheet_text(cell)};
  keep(field, std::move(value), std::move(reason));
}

void RowCells::side() {
  std::string side{sheet_text(table_.cell(row_, "side"))};
  if (same_word(side, "L") || same_word(side, "LT")) side = word(Side::left);
  if (same_word(side, "R") || same_word(side, "RT")) side = word(Side::right);
  if (!side.empty() && !parse_word<Side>(side)) {
    return keep("side", side, say("'{}' is neither left nor right; correct it", excerpt(side)));
  }
  if (side.empty()) {
    const X12Procedure by_modifiers{
        {}, {}, modifiers_in(sheet_text(table_.cell(row_, "modifiers")))};
    if (const auto found = by_modifiers.side()) side = word(*found);
  }
  keep("side", side, "");
}

void RowCells::modifiers() {
  const auto found = modifiers_in(sheet_text(table_.cell(row_, "modifiers")));
  keep("modifiers", fmt::format("{}", fmt::join(found, ";")), "");
}

void RowCells::whole(const char* field) {
  const auto& cell = table_.cell(row_, field);
  if (sheet_text(cell).empty()) return text(field);
  int number = 0;
  auto reason = read_sheet_whole(cell, table_.format(), number);
  auto value = reason.empty() ? fmt::to_string(number) : std::string{sheet_text(cell)};
  keep(field, std::move(value), std::move(reason));
}

void RowCells::amount(const char* field, const Currency& currency) {
  const auto& cell = table_.cell(row_, field);
  if (sheet_text(cell).empty()) return text(field);
  Money money;
  auto reason = read_sheet_money(cell, table_.format(), currency, money);
  auto value = reason.empty() ? plain_text(money) : std::string{sheet_text(cell)};
  keep(field, std::move(value), std::move(reason));
}

PersonClue RowCells::person() const {
  const auto of = [&](const char* field) {
    return std::string{sheet_text(table_.cell(row_, field))};
  };
  PersonClue made{of("patient_ref"), of("member_id"), of("given_name"), of("family_name"), {}};
  Date born;
  const auto& cell = table_.cell(row_, "birth_date");
  if (!sheet_text(cell).empty() && read_sheet_date(cell, table_.format(), born).empty()) {
    made.birth_date = born;
  }
  return made;
}

ClaimsRead read_claim_table(const MappedTable& table, const Currency& currency,
                            std::vector<std::string>& notes) {
  ClaimsRead made;
  made.stated.currency = currency;
  std::set<std::string> claims;
  for (const auto* row : table.rows()) {
    RowCells cells{table, *row};
    for (const auto* field :
         {"claim_ref", "patient_ref", "code", "payer", "submission", "replaces", "line_control"}) {
      cells.text(field);
    }
    cells.cells["submission"] = submission_word(cells.cells["submission"]);
    cells.side();
    cells.modifiers();
    cells.date("service_date");
    cells.whole("quantity");
    cells.amount("charge", currency);
    if (cells.blank("claim_ref") && cells.blank("code") && cells.blank("service_date")) {
      if (!cells.blank("charge")) {
        notes.push_back(
            say("Line {}: names no claim, code or day; it was taken to be a sum and left out.",
                row->number));
      }
      continue;
    }
    take_back(cells);
    if (const auto charge = parse_money(cells.cells["charge"], currency)) {
      made.stated.minor += charge->minor;
    }
    claims.insert(cells.cells["claim_ref"]);
    made.rows.push_back(
        {row->number, std::move(cells.cells), cells.person(), std::move(cells.fault)});
  }
  made.summed = made.stated;
  made.claims = static_cast<int>(claims.size());
  return made;
}

}  // namespace sparewell::exchange
