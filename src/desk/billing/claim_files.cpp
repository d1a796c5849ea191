#include "desk/billing/claim_files.hpp"

#include "clinic/say.hpp"
#include "desk/billing/claim_file_content.hpp"
#include "desk/billing/claim_keeping.hpp"
#include "desk/billing/table_mapping.hpp"
#include "desk/billing/whose_line.hpp"
#include "desk/import/rejects_folder.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

class FileKeeping {
 public:
  FileKeeping(store::UnitOfWork& work, const FileContent& content, BillingFileOutcome& outcome)
      : work_{work}, content_{content}, outcome_{outcome}, patients_{work}, payers_{work} {
    for (auto* sum : {&outcome.stated, &outcome.kept, &outcome.refused_sum}) {
      *sum = Money{0, content.currency};
    }
  }

  void keep() { outcome_.kind == BillingFileKind::claims ? keep_claims() : keep_payments(); }
  [[nodiscard]] std::map<std::string, std::string> rejects() const {
    if (!refused_claims_.empty()) {
      return {{"claims.csv", exchange::claim_rejects_text(refused_claims_)}};
    }
    if (!refused_paid_.empty()) {
      return {{"remittance.csv", exchange::paid_rejects_text(refused_paid_)}};
    }
    return {};
  }

 private:
  void keep_claims() {
    const auto& claims = content_.claims;
    outcome_.claims = claims.claims;
    outcome_.stated = claims.stated;
    ClaimKeeping keeping{work_};
    for (const auto& row : claims.rows) keep_claim(row, keeping);
    if (keeping.beside() > 0) {
      outcome_.notes.push_back(
          say_n("{} line was added beside stored ones of the same claim, day, side and code that "
                "differ in quantity, charge or number; those are as they were.",
                "{} lines were added beside stored ones of the same claim, day, side and code that "
                "differ in quantity, charge or number; those are as they were.",
                static_cast<unsigned long>(keeping.beside()), number_words(keeping.beside())));
    }
  }

  void keep_claim(exchange::ClaimRow row, ClaimKeeping& keeping) {
    auto& patient = row.cells["patient_ref"];
    auto whose = patients_.find(row.person, row.cells["claim_ref"]);
    patient = whose.reason.empty() ? whose.patient.text : row.person.patient_ref;
    ClaimLine line;
    auto fault = row.fault;
    if (!fault && !whose.reason.empty()) {
      fault = exchange::Fault{"patient_ref", std::move(whose.reason)};
    }
    if (!fault) fault = exchange::read_claim_row(row, content_.currency, line);
    if (fault) {
      const auto charge = parse_money(row.cells["charge"], content_.currency);
      if (charge) outcome_.refused_sum.minor += charge->minor;
      refuse_row(row.at, *fault);
      row.fault = std::move(fault);
      refused_claims_.push_back(std::move(row));
      return;
    }
    line.payer = payers_.spelt(line.payer);
    patients_.note(line.claim_ref, line.patient);
    if (line.charge) outcome_.kept.minor += line.charge->minor;
    count(keeping.keep(std::move(line)));
  }

  void keep_payments() {
    PaymentKeeping keeping{work_};
    for (const auto& payment : content_.payments.payments) {
      ++outcome_.claims;
      outcome_.stated.minor += payment.remittance.total.minor;
      keep_payment(payment, keeping);
    }
    for (const auto& row : content_.payments.refused) {
      // Of a table the file states what its rows state.
      if (const auto cell = row.cells.find("paid"); cell != row.cells.end()) {
        if (const auto paid = parse_money(cell->second, content_.currency)) {
          outcome_.stated.minor += paid->minor;
          outcome_.refused_sum.minor += paid->minor;
        }
      }
      refuse_row(row.at, row.fault);
      refused_paid_.push_back(row);
    }
  }

  void keep_payment(const exchange::PaymentRead& payment, PaymentKeeping& keeping) {
    if (!payment.fault.empty()) {
      outcome_.refused_sum.minor += payment.summed.minor;
      const exchange::Fault fault{"", payment.fault};
      refuse_row(payment.at, fault);
      for (const auto& row : payment.lines) {
        refused_paid_.push_back(exchange::refused_row(row, payment.remittance, fault));
      }
      return;
    }
    auto remittance = payment.remittance;
    remittance.payer = payers_.spelt(remittance.payer);
    remittance.source = outcome_.file;
    std::vector<RemittanceLine> lines;
    int nobodys = 0;
    for (const auto& row : payment.lines) {
      auto& line = lines.emplace_back(row.line);
      line.payer = remittance.payer;
      if (line.entry == RemittanceEntry::provider) continue;
      line.patient = patients_.find(row.person, line.claim_ref).patient;
      nobodys += line.patient.empty() ? 1 : 0;
    }
    const auto result =
        outcome_.is_x12 ? keeping.keep_whole(remittance, std::move(lines))
                        : keeping.keep_lines(remittance, std::move(lines), content_.holds_rejects);
    if (!result.refusal.empty()) {
      outcome_.refused_sum.minor += payment.summed.minor;
      refuse_row(payment.at, {"", result.refusal});
      return;
    }
    outcome_.kept.minor += payment.summed.minor;
    outcome_.without_patient += nobodys;
    outcome_.added += result.added;
    outcome_.changed += result.changed;
    outcome_.unchanged += result.unchanged;
  }

  void refuse_row(int at, const exchange::Fault& fault) {
    outcome_.refused.push_back({outcome_.file, at, fault.column, fault.reason});
  }
  void count(Kept kept) {
    ++(kept == Kept::added     ? outcome_.added
       : kept == Kept::changed ? outcome_.changed
                               : outcome_.unchanged);
  }

  store::UnitOfWork& work_;
  const FileContent& content_;
  BillingFileOutcome& outcome_;
  PatientsOfLines patients_;
  PayerNames payers_;
  std::vector<exchange::ClaimRow> refused_claims_;
  std::vector<exchange::RefusedPaidRow> refused_paid_;
};

void write_rejects(const BillingFileRequest& request,
                   const std::map<std::string, std::string>& rejects, BillingFileOutcome& outcome) {
  if (rejects.empty()) return;
  const auto written = write_rejects_folder(request.file.parent_path() / "rejects", rejects);
  if (written) {
    outcome.rejects_folder = *written;
  } else {
    outcome.notes.push_back(written.error().sentence);
  }
}

}  // namespace

Expected<BillingFileOutcome> read_billing_file(store::Store& store,
                                               const BillingFileRequest& request,
                                               const store::Author& author) {
  BillingFileOutcome outcome;
  outcome.file = request.file.filename().string();
  outcome.kind = request.kind;
  const auto work = store.begin_write(author);
  const auto content = read_file_content(*work, request, outcome);
  if (!content) return tl::unexpected(content.error());
  FileKeeping keeping{*work, *content, outcome};
  keeping.keep();
  bool anything = outcome.added > 0 || outcome.changed > 0;
  if (!request.save_as.empty() && outcome.mapping) {
    anything = save_mapping(*work, *outcome.mapping) || anything;
  }
  if (request.dry_run) return outcome;
  if (anything) work->commit();
  outcome.written = true;
  write_rejects(request, keeping.rejects(), outcome);
  return outcome;
}

}  // namespace sparewell::desk
