#include "supply/recall.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>

namespace sparewell::supply {
namespace {

/// Letters in upper case and digits alone: how people tell lots apart when they copy them.
std::string letters_and_digits(const std::string& lot) {
  std::string made;
  for (const char c : lot) {
    if (c >= 'a' && c <= 'z') {
      made += static_cast<char>(c - 'a' + 'A');
    } else if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               static_cast<unsigned char>(c) >= 0x80U) {
      made += c;
    }
  }
  return made;
}

/// nullopt for another lot.
std::optional<LotMatch> match_of(const std::string& recorded, const std::string& recalled) {
  if (recalled.empty() || recorded == recalled) return LotMatch::recalled;
  const auto plain = letters_and_digits(recorded);
  if (plain.empty()) return LotMatch::not_recorded;
  if (plain == letters_and_digits(recalled)) return LotMatch::written_alike;
  return std::nullopt;
}

bool before(const RecalledUnit& a, const RecalledUnit& b) {
  if (a.in_hands != b.in_hands) return a.in_hands;
  if (a.match != b.match) return a.match < b.match;
  return std::tie(b.unit.issued_on, a.unit.side, a.unit.serial, a.unit.copy) <
         std::tie(a.unit.issued_on, b.unit.side, b.unit.serial, b.unit.copy);
}

bool patient_before(const RecalledPatient& a, const RecalledPatient& b) {
  if (a.in_hands() != b.in_hands()) return a.in_hands();
  const auto a_visit = a.visit.value_or(Date::max());
  const auto b_visit = b.visit.value_or(Date::max());
  return std::tie(a_visit, a.patient.ref) < std::tie(b_visit, b.patient.ref);
}

void add_patients(Recall& recall, const ItemRecords& records, std::set<std::string>& others) {
  std::map<PatientRef, std::vector<RecalledUnit>> units;
  for (const Unit& unit : records.units) {
    if (const auto match = match_of(unit.lot, recall.lot)) {
      const bool in_hands = !unit.ended_on || *unit.ended_on > recall.today;
      units[unit.patient].push_back({unit, *match, in_hands});
    } else {
      others.insert(unit.lot);
    }
  }
  std::map<PatientRef, const Patient*> known;
  for (const Patient& patient : records.patients) known.emplace(patient.ref, &patient);
  for (auto& [ref, of_patient] : units) {
    std::ranges::sort(of_patient, before);
    const auto found = known.find(ref);
    Patient patient;
    patient.ref = ref;
    if (found != known.end()) patient = *found->second;
    auto visit = patient.next_visit;
    if (visit && *visit < recall.today) visit.reset();
    recall.patients.push_back({std::move(patient), visit, std::move(of_patient)});
  }
  std::ranges::sort(recall.patients, patient_before);
}

void add_stock(Recall& recall, const ItemRecords& records, std::set<std::string>& others) {
  for (const StockLevel& level : records.shelf) {
    if (const auto match = match_of(level.lot.lot, recall.lot)) {
      recall.stock.push_back({level, *match, sort_of_place(records.places, level.place)});
    } else {
      others.insert(level.lot.lot);
    }
  }
  std::ranges::sort(recall.stock, {}, [](const RecalledStock& stock) {
    return std::tie(stock.level.place, stock.match, stock.level.lot);
  });
}

void add_loans(Recall& recall, const ItemRecords& records) {
  for (const Loan& loan : records.loans) {
    const auto match = match_of(loan.lot.lot, recall.lot);
    if (match && loan.lot.item == recall.item && loan.outstanding() > 0) {
      recall.loans.push_back({loan, *match});
    }
  }
  std::ranges::sort(recall.loans, {}, [](const RecalledLoan& lent) { return lent.loan.number; });
}

}  // namespace

Recall find_recalled(const ItemCode& item, const std::string& lot, const ItemRecords& records,
                     Date today) {
  Recall recall;
  recall.item = item;
  recall.lot = lot;
  recall.today = today;
  std::set<std::string> others;
  add_patients(recall, records, others);
  add_stock(recall, records, others);
  add_loans(recall, records);
  for (const OrderLine& line : records.order_lines) {
    const bool is_draft = line.state == OrderState::draft;
    if (is_draft || line.outstanding() > 0) recall.orders.push_back(line);
  }
  std::ranges::sort(recall.orders, {}, [](const OrderLine& line) {
    return std::tie(line.ordered_on, line.supplier, line.order_ref, line.copy);
  });
  recall.other_lots.assign(others.begin(), others.end());
  return recall;
}

std::vector<StockMovement> transfers_to_quarantine(const Recall& recall,
                                                   const std::string& reason) {
  std::vector<StockMovement> transfers;
  for (const RecalledStock& stock : recall.stock) {
    if (stock.sort != PlaceSort::store || stock.match != LotMatch::recalled) continue;
    const auto& [lot, place, quantity] = stock.level;
    transfers.push_back({lot, place, MovementKind::transfer, -quantity, recall.today, reason});
    transfers.push_back(
        {lot, "quarantine", MovementKind::transfer, quantity, recall.today, reason});
  }
  return transfers;
}

}  // namespace sparewell::supply
