// How long a recall takes in a clinic file with a million stock movements, beside reading all of
// it.
#include <chrono>
#include <cmath>
#include <filesystem>
#include <random>

#include <fmt/format.h>

#include "bench/best_seconds.hpp"
#include "desk/recall.hpp"
#include "store/open.hpp"

namespace {

using namespace sparewell;

constexpr int item_count = 400;
constexpr int lots_per_item = 50;
constexpr int patient_count = 10'000;
constexpr int unit_count = 100'000;
constexpr int order_count = 20'000;
constexpr int movement_count = 1'000'000;

const Date today = make_date(2026, 11, 25);

ItemCode item_code(unsigned number) {
  return {fmt::format("ITEM-{}", number % item_count)};
}

std::string lot_of(unsigned number) {
  return fmt::format("LOT-{}", number % lots_per_item);
}

void add_records(store::UnitOfWork& work, std::mt19937& random) {
  Supplier supplier;
  supplier.name = {"Example Supplies"};
  supplier.currency = {"EUR"};
  work.put(supplier);
  for (unsigned i = 0; i < item_count; ++i) {
    Item item;
    item.code = item_code(i);
    item.currency = {"EUR"};
    work.put(item);
  }
  for (int i = 0; i < patient_count; ++i) {
    Patient patient;
    patient.ref = {fmt::format("P{}", i)};
    work.put(patient);
  }
  for (int i = 0; i < unit_count; ++i) {
    Unit unit;
    unit.patient = {fmt::format("P{}", random() % patient_count)};
    unit.item = item_code(static_cast<unsigned>(random()));
    unit.lot = lot_of(static_cast<unsigned>(random()));
    unit.serial = fmt::format("{}", i);
    unit.issued_on = today - days{random() % 2000};
    if (random() % 3 != 0) unit.ended_on = unit.issued_on + days{200};
    work.put(unit);
  }
  for (int i = 0; i < order_count; ++i) {
    OrderLine line;
    line.supplier = supplier.name;
    line.order_ref = fmt::format("PO-{}", i);
    line.item = item_code(static_cast<unsigned>(random()));
    line.ordered_on = today - days{random() % 2000};
    line.quantity = 5;
    line.received_quantity = i % 20 == 0 ? 2 : 5;
    work.put(line);
  }
}

/// Receipts and issues in turn, so that the stock stays small.
void add_movements(store::UnitOfWork& work, unsigned from, unsigned to) {
  for (unsigned i = from; i < to; ++i) {
    StockMovement movement;
    movement.lot = {item_code(i / 2), lot_of(i / 2 / item_count), make_date(2029, 1, 31)};
    movement.place = i / 2 % 3 == 0 ? "main store" : "room 2";
    movement.kind = i % 2 == 0 ? MovementKind::receipt : MovementKind::issue;
    movement.quantity = i % 2 == 0 ? 2 : i / 2 % 37 == 0 ? -1 : -2;
    movement.on = today - days{i % 2000};
    work.record(movement);
  }
}

void make_file(const std::string& path) {
  const auto store = store::open_clinic_file(path, store::OpenMode::create,
                                             [] { return std::chrono::system_clock::now(); });
  std::mt19937 random{20261125};
  const auto first = store->begin_write({"bench", "records"});
  add_records(*first, random);
  first->commit();
  constexpr unsigned chunk = 100'000;
  for (unsigned from = 0; from < movement_count; from += chunk) {
    const auto work = store->begin_write({"bench", "movements"});
    add_movements(*work, from, from + chunk);
    work->commit();
  }
}

std::unique_ptr<store::Store> open(const std::string& path) {
  return store::open_clinic_file(path, store::OpenMode::existing,
                                 [] { return std::chrono::system_clock::now(); });
}

}  // namespace

int main(int count, char** arguments) {
  const std::string path = count > 1 ? arguments[1] : "recall_bench.db";
  if (!std::filesystem::exists(path)) {
    const double making = bench::best_seconds(1, [&] { make_file(path); });
    fmt::print("{} with {} movements made in {:.0f} s\n", path, movement_count, making);
  }
  const double opening = bench::best_seconds(2, [&] { (void)open(path); });
  fmt::print("Open the file, which is looked through for damage: {:.2f} s\n", opening);
  const auto store = open(path);
  std::size_t rows = 0;
  const double whole = bench::best_seconds(2, [&] {
    const auto snapshot = store->read();
    rows = snapshot->movements().size() + store::load_clinic(*snapshot).units.size();
  });
  fmt::print("Read all of it: {:.2f} s ({} movements and units)\n", whole, rows);
  for (const std::string lot : {"LOT-7", ""}) {
    desk::RecallNotice notice;
    const double recall = bench::best_seconds(
        5, [&] { notice = *desk::look_up_recall(*store->read(), item_code(7), lot, today); });
    fmt::print(
        "Recall {}: {:.4f} s, {:.0f} times faster than reading all; {} patients, {} shelves, "
        "{} order lines\n",
        lot.empty() ? "all lots of an item" : "one lot", recall, whole / recall,
        notice.found.patients.size(), notice.found.stock.size(), notice.found.orders.size());
  }
}
