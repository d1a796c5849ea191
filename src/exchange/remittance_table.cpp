#include <algorithm>

#include "clinic/say.hpp"
#include "exchange/claim_table.hpp"
#include "exchange/csv_file.hpp"
#include "exchange/rejects_file.hpp"
#include "exchange/x12/values.hpp"

namespace sparewell::exchange {
namespace {

/// Adjustments as "CO:45:10.00;PR:2:5.00".
Reason read_adjustments(std::string_view text, const Currency& currency,
                        std::vector<Adjustment>& into) {
  while (!text.empty()) {
    const auto end = std::min(text.find(';'), text.size());
    const auto part = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (part.empty()) continue;
    const auto adjustment = parse_adjustment(part, currency);
    if (!adjustment) {
      return say("'{}' is not GROUP:REASON:AMOUNT, as in CO:45:10.00; correct it", excerpt(part));
    }
    into.push_back(*adjustment);
  }
  return {};
}

class PaymentRow {
 public:
  PaymentRow(const MappedTable& table, const SheetRow& row, const Currency& currency)
      : cells_{table, row}, at_{row.number}, currency_{currency} {
    for (const auto* field : {"payer", "reference", "claim_ref", "payer_claim", "status",
                              "patient_ref", "member_id", "code", "adjustments", "line_control"}) {
      cells_.text(field);
    }
    cells_.side();
    cells_.modifiers();
    for (const auto* field : {"paid_on", "service_date"}) cells_.date(field);
    cells_.whole("quantity");
    for (const auto* field : {"charge", "paid", "contractual", "patient_share"}) {
      cells_.amount(field, currency);
    }
  }

  /// Whether it names neither payment nor claim, such as a line of sums.
  [[nodiscard]] bool names_nothing() const {
    return cells_.blank("reference") && cells_.blank("claim_ref") && cells_.blank("paid_on");
  }
  [[nodiscard]] bool has_amount() const { return !cells_.blank("paid"); }

  [[nodiscard]] std::optional<Fault> fault() {
    for (const auto* field : {"payer", "reference", "paid_on", "paid"}) {
      if (!cells_.fault && cells_.blank(field)) {
        cells_.fault = Fault{field, said("is empty; fill it in")};
      }
    }
    for (const auto& [field, text] : cells_.cells) {
      if (!cells_.fault && !is_plain(text)) {
        cells_.fault = Fault{field, said("holds a line break or is too long; correct it")};
      }
    }
    if (!cells_.fault) {
      auto reason = read_adjustments(cells_.cells["adjustments"], currency_, entry_.adjustments);
      if (!reason.empty()) cells_.fault = Fault{"adjustments", std::move(reason)};
    }
    return cells_.fault;
  }

  /// To be called once it has no fault.
  [[nodiscard]] PaidRow line() {
    entry_.row.at = at_;
    entry_.row.person = cells_.person();
    auto& line = entry_.row.line;
    line.claim_ref = cells_.cells["claim_ref"];
    line.payer_claim = cells_.cells["payer_claim"];
    line.status = cells_.cells["status"];
    line.side = parse_word<Side>(cells_.cells["side"]);
    line.service_date = parse_iso_date(cells_.cells["service_date"]);
    line.code = cells_.cells["code"];
    line.line_control = cells_.cells["line_control"];
    line.modifiers = parts_of(cells_.cells["modifiers"]);
    if (!cells_.blank("quantity")) line.quantity = std::stoi(cells_.cells["quantity"]);
    line.entry = line.code.empty()
                     ? line.claim_ref.empty() ? RemittanceEntry::provider : RemittanceEntry::claim
                     : RemittanceEntry::line;
    line.paid = money("paid");
    add("CO", "45", "contractual");
    add("PR", unstated_reason, "patient_share");
    line.charge = money("charge");
    if (cells_.blank("charge")) line.charge.minor = -entry_.open();
    return entry_.balanced();
  }

  [[nodiscard]] Remittance remittance() {
    return {cells_.cells["payer"],
            cells_.cells["reference"],
            *parse_iso_date(cells_.cells["paid_on"]),
            {0, currency_},
            {}};
  }
  [[nodiscard]] RefusedPaidRow refused_for(Fault fault) const {
    return {at_, std::move(fault), cells_.cells};
  }

 private:
  [[nodiscard]] Money money(const char* field) {
    return parse_money(cells_.cells[field], currency_).value_or(Money{0, currency_});
  }
  void add(std::string_view group, std::string_view reason, const char* field) {
    if (cells_.blank(field) || money(field).minor == 0) return;
    entry_.adjustments.push_back({std::string{group}, std::string{reason}, money(field), {}});
  }
  static std::vector<std::string> parts_of(std::string_view text) {
    std::vector<std::string> parts;
    while (!text.empty()) {
      const auto end = std::min(text.find(';'), text.size());
      parts.emplace_back(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    return parts;
  }
  RowCells cells_;
  int at_;
  Currency currency_;
  PaidEntry entry_;
};

}  // namespace

PaymentsRead read_remittance_table(const MappedTable& table, const Currency& currency,
                                   std::vector<std::string>& notes) {
  PaymentsRead made;
  std::map<std::pair<std::string, std::string>, std::size_t> known;
  for (const auto* row : table.rows()) {
    PaymentRow read{table, *row, currency};
    if (read.names_nothing()) {
      if (read.has_amount()) {
        notes.push_back(
            say("Line {}: names no payment or claim; it was taken to be a sum and left out.",
                row->number));
      }
      continue;
    }
    if (auto fault = read.fault()) {
      made.refused.push_back(read.refused_for(std::move(*fault)));
      continue;
    }
    auto remittance = read.remittance();
    const auto [at, is_new] =
        known.emplace(std::pair{remittance.payer, remittance.reference}, made.payments.size());
    if (is_new) {
      auto& payment = made.payments.emplace_back();
      payment.at = row->number;
      payment.remittance = std::move(remittance);
      payment.summed.currency = currency;
    } else if (made.payments[at->second].remittance.paid_on != remittance.paid_on) {
      made.refused.push_back(read.refused_for(
          {"paid_on",
           said("is another day than in an earlier line of the same payment; correct it")}));
      continue;
    }
    auto& payment = made.payments[at->second];
    auto line = read.line();
    line.line.payer = payment.remittance.payer;
    line.line.reference = payment.remittance.reference;
    line.line.position = table.first_line(*row);
    payment.summed.minor += line.line.paid.minor;
    payment.remittance.total = payment.summed;
    payment.lines.push_back(std::move(line));
  }
  return made;
}

std::string paid_rejects_text(const std::vector<RefusedPaidRow>& rows) {
  std::vector<ColumnSpec> specs;
  std::string header;
  for (const auto& field : table_fields(remittance_target)) {
    specs.push_back({field.name, false});
    header += field.name;
    header += ',';
  }
  header.back() = '\n';
  const auto file = CsvFile::open("remittance.csv", header, {}, specs);
  std::vector<Reject> rejects;
  for (const auto& row : rows) {
    auto& made = rejects.emplace_back();
    made.line = row.at;
    made.fault = row.fault;
    for (const auto& spec : specs) {
      const auto cell = row.cells.find(std::string{spec.name});
      made.fields.push_back(cell == row.cells.end() ? std::string{} : cell->second);
    }
  }
  return rejects_text(*file, rejects);
}

}  // namespace sparewell::exchange
