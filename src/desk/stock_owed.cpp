#include "desk/stock_owed.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_use.hpp"
#include "desk/issue_check.hpp"
#include "desk/issuing.hpp"
#include "desk/stock_refusals.hpp"
#include "desk/typed_amounts.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using store::Row;
using store::Snapshot;
using store::UnitOfWork;

bool is_supplier(const Snapshot& snapshot, const SupplierName& name) {
  return std::ranges::any_of(snapshot.all<Supplier>(),
                             [&](const auto& row) { return row.record.name == name; });
}

Expected<SupplierName> supplier_of(const Snapshot& snapshot, const ReturnRequest& request,
                                   const Item& item) {
  const SupplierName name{request.supplier.empty() ? item.supplier.text : request.supplier};
  if (name.empty()) {
    return refuse(
        say("The catalogue names no supplier of {}; say who takes it back.", item.code.text));
  }
  if (!is_supplier(snapshot, name)) {
    return refuse(say("There is no supplier '{}'; check the name.", name.text));
  }
  return name;
}

Expected<Money> amount(const std::string& text, const Currency& currency) {
  auto money = typed_amount(text, currency);
  if (!money) return tl::unexpected{money.error()};
  if (money->minor < 0) return refuse(say("A credit is not below zero."));
  return money;
}

Expected<Money> credit_due(const ReturnRequest& request, const Item& item) {
  const Currency currency = item.unit_cost ? item.unit_cost->currency : item.currency;
  if (!request.credit.empty()) return amount(request.credit, currency);
  const auto usual = supply::usual_credit(item, request.pieces.quantity);
  if (usual) return *usual;
  return refuse(
      say("The catalogue has no unit cost of {}; give the credit due, 0 if there is none.",
          item.code.text));
}

/// The next free copy number beside units that are alike in everything else.
int next_copy(const std::vector<Row<Unit>>& units, const Unit& unit) {
  int last = 0;
  for (const auto& row : units) {
    const Unit& other = row.record;
    const bool alike = other.patient == unit.patient && other.side == unit.side &&
                       other.lot == unit.lot && other.serial == unit.serial &&
                       other.issued_on == unit.issued_on;
    if (alike) last = std::max(last, other.copy);
  }
  return last + 1;
}

void issue_kept(UnitOfWork& work, const Loan& loan, const LoanEndRequest& request) {
  if (request.end.kept > 0) {
    (void)use_bookings(work, loan.patient, loan.lot.item, request.end.kept);
  }
  for (int i = 0; i < request.end.kept; ++i) {
    Unit unit;
    unit.patient = loan.patient;
    unit.side = loan.side;
    unit.item = loan.lot.item;
    unit.lot = loan.lot.lot;
    const auto at = static_cast<std::size_t>(i);
    if (at < request.serials.size()) unit.serial = request.serials[at];
    unit.issued_on = loan.lent_on;
    unit.copy = next_copy(work.units_of(unit.item), unit);
    work.put(unit);
  }
}

/// The checks of an issue, on the pieces that are to be lent.
Expected<IssueCheck> check_loan(const Clinic& clinic, const LendRequest& request, const Lot& lot,
                                Date today) {
  IssueQuestion question;
  question.patient = {request.patient};
  question.side = request.side;
  question.item = lot.item;
  question.quantity = request.pieces.quantity;
  question.lot = lot.lot;
  question.place = request.pieces.place;
  question.day = today;
  return check_pieces(clinic, question, {{lot, request.pieces.place, request.pieces.quantity}});
}

/// Why the part is not lent; "" when nothing stops it or a clinician has decided.
std::string loan_refusal(const IssueCheck& check, const LendRequest& request) {
  if (request.override_by.empty() != request.override_because.empty()) {
    return said("Name both the clinician who decides and the reason.");
  }
  if (!check.stops() || !request.override_by.empty()) return {};
  return say("{} Nothing was lent. A clinician may decide otherwise: fill in name and reason.",
             words_of(check, care::Gravity::stops));
}

/// The note of the loan with what was decided; it is kept.
std::string decided_note(const IssueCheck& check, const LendRequest& request) {
  return fmt::format("{}{}decided by {}: {} ({})", request.note, request.note.empty() ? "" : "; ",
                     request.override_by, request.override_because,
                     words_of(check, care::Gravity::stops));
}

/// What stops it or has to be asked, a sentence or two each.
std::vector<std::string> loan_notes(const IssueCheck& check) {
  std::vector<std::string> made;
  for (const auto& finding : check.findings) {
    if (finding.gravity == care::Gravity::note) continue;
    made.push_back(fmt::format("{}: {}", gravity_words(finding.gravity), finding.words));
  }
  return made;
}

}  // namespace

Expected<Booked> book_return(UnitOfWork& work, const ReturnRequest& request, Date today) {
  const auto view = view_stock(work, request.pieces.item);
  if (!view) return tl::unexpected{view.error()};
  const auto item = work.item(request.pieces.item)->record;
  const auto supplier = supplier_of(work, request, item);
  if (!supplier) return tl::unexpected{supplier.error()};
  if (request.reference.empty()) {
    return refuse(
        say("Give the reference under which the supplier takes the pieces back, or your own."));
  }
  const auto due = credit_due(request, item);
  if (!due) return tl::unexpected{due.error()};
  const auto decided = supply::send_back(*view, request.pieces, *supplier, today, request.reason);
  if (!decided) return refuse(move_refusal_words(decided.error(), *view));
  write_move(work, *decided);
  SupplierReturn sent;
  sent.number = work.last_supplier_return() + 1;
  sent.supplier = *supplier;
  sent.reference = request.reference;
  sent.lot = decided->movements.front().lot;
  sent.quantity = request.pieces.quantity;
  sent.reason = request.reason;
  sent.sent_on = today;
  sent.due = *due;
  work.put(sent);
  return Booked{decided->movements,
                {say("Return {}: a credit of {} is due.", sent.number, amount_words(*due))},
                sent.number};
}

Expected<Booked> book_credit(UnitOfWork& work, const CreditRequest& request, Date today) {
  const auto row = work.supplier_return(request.number);
  if (!row) return refuse(say("There is no return {}; check the number.", request.number));
  const auto& sent = row->record;
  supply::CreditNote note{std::nullopt, request.is_last, request.accept_more, request.back_to,
                          request.reason};
  if (!request.amount.empty()) {
    const auto credited =
        amount(request.amount, sent.due ? sent.due->currency : work.settings().currency);
    if (!credited) return tl::unexpected{credited.error()};
    note.amount = *credited;
  }
  const auto view = view_stock(work, sent.lot.item);
  if (!view) return tl::unexpected{view.error()};
  auto decided = supply::credit(*view, sent, note, today);
  if (!decided) return refuse(credit_refusal_words(decided.error(), sent));
  for (const auto& movement : decided->movements) work.record(movement);
  work.put_instead(row->id, decided->after);
  const auto rest = decided->after.outstanding();
  std::string words = say("Return {} is settled.", sent.number);
  if (decided->after.is_open() && rest) {
    words = say("Return {}: {} still due.", sent.number, amount_words(*rest));
  } else if (rest && rest->minor > 0) {
    words = say("Return {} is settled; {} of the credit due did not come.", sent.number,
                amount_words(*rest));
  }
  return Booked{std::move(decided->movements), {std::move(words)}, sent.number};
}

Expected<Booked> book_loan(UnitOfWork& work, const LendRequest& request, Date today) {
  const auto view = view_stock(work, request.pieces.item);
  if (!view) return tl::unexpected{view.error()};
  const PatientRef patient{request.patient};
  if (patient.empty()) return refuse(say("Name the patient by their reference."));
  if (!work.patient(patient)) {
    return refuse(say("There is no patient '{}'; check the reference.", patient.text));
  }
  if (request.due_on < today) {
    return refuse(say("The day until which the part is lent lies in the past; give a later one."));
  }
  Loan loan;
  loan.number = work.last_loan() + 1;
  const auto reason =
      fmt::format("loan {} to {} until {}", loan.number, patient.text, iso_text(request.due_on));
  const auto decided = supply::lend(*view, request.pieces, today, reason);
  if (!decided) return refuse(move_refusal_words(decided.error(), *view));
  const auto clinic = read_for_issue(work, request.pieces.item);
  const auto check = check_loan(clinic, request, decided->movements.front().lot, today);
  if (!check) return tl::unexpected{check.error()};
  if (auto refusal = loan_refusal(*check, request); !refusal.empty()) {
    return refuse(std::move(refusal));
  }
  write_move(work, *decided);
  loan.patient = patient;
  loan.side = request.side;
  loan.lot = decided->movements.front().lot;
  loan.quantity = request.pieces.quantity;
  loan.place = request.pieces.place;
  loan.lent_on = today;
  loan.due_on = request.due_on;
  loan.note = request.note;
  if (check->stops()) loan.note = decided_note(*check, request);
  work.put(loan);
  Booked booked{decided->movements,
                {say("Loan {}: back by {}.", loan.number, date_words(loan.due_on))},
                loan.number};
  for (auto& note : loan_notes(*check)) booked.notes.push_back(std::move(note));
  if (loan.lot.use_by && *loan.lot.use_by < loan.due_on) {
    booked.notes.push_back(
        say("The lot expires on {}, before the loan ends.", date_words(*loan.lot.use_by)));
  }
  return booked;
}

Expected<Booked> book_loan_end(UnitOfWork& work, const LoanEndRequest& request, Date today) {
  const auto row = work.loan(request.number);
  if (!row) return refuse(say("There is no loan {}; check the number.", request.number));
  const auto& loan = row->record;
  if (request.serials.size() > static_cast<std::size_t>(std::max(request.end.kept, 0))) {
    return refuse(say("There are more serial numbers than pieces that are kept; check them."));
  }
  const auto view = view_stock(work, loan.lot.item);
  if (!view) return tl::unexpected{view.error()};
  auto decided = supply::settle_loan(*view, loan, request.end, today);
  if (!decided) return refuse(loan_refusal_words(decided.error(), loan));
  for (const auto& movement : decided->movements) work.record(movement);
  work.put_instead(row->id, decided->after);
  issue_kept(work, loan, request);
  const int out = decided->after.outstanding();
  auto words = out == 0
                   ? say("Loan {} is settled.", loan.number)
                   : say_n("Loan {}: {} piece is still out.", "Loan {}: {} pieces are still out.",
                           static_cast<unsigned long>(out), loan.number, number_words(out));
  Booked booked{std::move(decided->movements), {std::move(words)}, loan.number};
  if (const int kept = request.end.kept; kept > 0) {
    booked.notes.push_back(say_n("{} piece is issued to {} as of {}, the day of the loan.",
                                 "{} pieces are issued to {} as of {}, the day of the loan.",
                                 static_cast<unsigned long>(kept), number_words(kept),
                                 loan.patient.text, date_words(loan.lent_on)));
  }
  return booked;
}

}  // namespace sparewell::desk
