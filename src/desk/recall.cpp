#include "desk/recall.hpp"

#include <set>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

std::vector<Place> places(const store::Snapshot& snapshot) {
  std::vector<Place> made;
  for (auto& row : snapshot.all<Place>()) made.push_back(std::move(row.record));
  return made;
}

supply::ItemRecords records_of(const store::Snapshot& snapshot, const ItemCode& item) {
  supply::ItemRecords records;
  std::set<PatientRef> patients;
  for (auto& row : snapshot.units_of(item)) {
    patients.insert(row.record.patient);
    records.units.push_back(std::move(row.record));
  }
  for (const PatientRef& ref : patients) {
    if (auto patient = snapshot.patient(ref)) records.patients.push_back(patient->record);
  }
  records.shelf = snapshot.shelf_of(item);
  for (auto& row : snapshot.order_lines_of(item)) {
    records.order_lines.push_back(std::move(row.record));
  }
  records.places = places(snapshot);
  for (auto& row : snapshot.all<Loan>()) records.loans.push_back(std::move(row.record));
  return records;
}

}  // namespace

Expected<RecallNotice> look_up_recall(const store::Snapshot& snapshot, const ItemCode& item,
                                      const std::string& lot, Date today) {
  const auto known = snapshot.item(item);
  if (!known) {
    return refuse(
        say("The catalogue has no item '{}'; check the code on the maker's notice against "
            "the catalogue.",
            item.text));
  }
  return RecallNotice{known->record,
                      supply::find_recalled(item, lot, records_of(snapshot, item), today)};
}

std::vector<StockLevel> quarantine_recalled(store::Store& store, const ItemCode& item,
                                            const std::string& lot, Date today,
                                            const store::Author& author) {
  const auto work = store.begin_write(author);
  supply::ItemRecords records;
  records.shelf = work->shelf_of(item);
  records.places = places(*work);
  const auto recall = supply::find_recalled(item, lot, records, today);
  std::vector<StockLevel> moved;
  for (const auto& transfer : supply::transfers_to_quarantine(recall, author.why)) {
    work->record(transfer);
    if (transfer.quantity < 0) moved.push_back({transfer.lot, transfer.place, -transfer.quantity});
  }
  if (!moved.empty()) work->commit();
  return moved;
}

}  // namespace sparewell::desk
