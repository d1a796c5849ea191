#include "desk/stock_booking.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/stock_refusals.hpp"
#include "supply/reversal.hpp"

namespace sparewell::desk {
namespace {

std::vector<Place> places(const store::Snapshot& snapshot) {
  std::vector<Place> made;
  for (auto& row : snapshot.all<Place>()) made.push_back(std::move(row.record));
  return made;
}

Expected<Booked> write(store::UnitOfWork& work, const supply::Decided<supply::StockMove>& decided,
                       const supply::StockView& view) {
  if (!decided) return refuse(move_refusal_words(decided.error(), view));
  write_move(work, *decided);
  return Booked{decided->movements, {}, 0};
}

}  // namespace

Expected<supply::StockView> view_stock(const store::Snapshot& snapshot, const ItemCode& item) {
  if (item.empty()) return refuse(say("Name the item by its code."));
  supply::StockView view{snapshot.shelf_of(item), places(snapshot)};
  if (view.levels.empty() && !snapshot.item(item)) {
    return refuse(say("The catalogue has no item '{}'; check the code.", item.text));
  }
  return view;
}

void write_move(store::UnitOfWork& work, const supply::StockMove& move) {
  for (const Place& place : move.new_places) work.put(place);
  for (const StockMovement& movement : move.movements) work.record(movement);
}

Expected<Booked> book_transfer(store::UnitOfWork& work, const supply::Pieces& pieces,
                               const std::string& to, supply::Travel travel, Date today,
                               const std::string& reason) {
  const auto view = view_stock(work, pieces.item);
  if (!view) return tl::unexpected{view.error()};
  return write(work, supply::transfer(*view, pieces, to, travel, today, reason), *view);
}

Expected<Booked> book_arrival(store::UnitOfWork& work, const supply::Arrival& arrival, Date today) {
  const auto view = view_stock(work, arrival.item);
  if (!view) return tl::unexpected{view.error()};
  const auto decided = supply::arrive(*view, arrival, today);
  if (!decided) return refuse(arrival_refusal_words(decided.error(), arrival, *view));
  write_move(work, decided->move);
  return Booked{decided->move.movements, arrival_notes(*decided), 0};
}

Expected<Booked> book_quarantine(store::UnitOfWork& work, const supply::Pieces& pieces,
                                 const std::string& to, Date today, const std::string& reason) {
  const auto view = view_stock(work, pieces.item);
  if (!view) return tl::unexpected{view.error()};
  return write(work, supply::quarantine(*view, pieces, to, today, reason), *view);
}

Expected<Booked> book_release(store::UnitOfWork& work, const supply::Pieces& pieces,
                              const std::string& to, Date today, const std::string& reason) {
  const auto view = view_stock(work, pieces.item);
  if (!view) return tl::unexpected{view.error()};
  const auto target = to.empty() ? work.settings().main_place : to;
  return write(work, supply::release(*view, pieces, target, today, reason), *view);
}

Expected<Booked> book_write_off(store::UnitOfWork& work, const supply::Pieces& pieces,
                                supply::WriteOff why, Date today, const std::string& note) {
  const auto view = view_stock(work, pieces.item);
  if (!view) return tl::unexpected{view.error()};
  return write(work, supply::write_off(*view, pieces, why, today, note), *view);
}

Expected<Booked> book_reversal(store::UnitOfWork& work, store::RowId booking, Date today,
                               const std::string& reason) {
  const auto found = work.booking(booking);
  if (!found) {
    return refuse(
        say("There is no booking {} in the ledger; look at the item's history.", booking.value));
  }
  if (auto refusal = reversal_refusal(*found, reason); !refusal.empty()) {
    return refuse(std::move(refusal));
  }
  std::vector<StockLevel> levels;
  std::vector<ItemCode> seen;
  for (const auto& movement : found->movements) {
    if (std::ranges::find(seen, movement.lot.item) != seen.end()) continue;
    seen.push_back(movement.lot.item);
    for (auto& level : work.shelf_of(movement.lot.item)) levels.push_back(std::move(level));
  }
  const auto why = fmt::format("takes back booking {}: {}", booking.value, reason);
  auto decided = supply::reverse(found->movements, levels, today, why);
  if (!decided) return refuse(moved_on_words(*found, decided.error()));
  write_move(work, {*decided, {}});
  work.mark_reversed(booking);
  return Booked{std::move(*decided), {}, 0};
}

Expected<Booked> book_place(store::UnitOfWork& work, const Place& place) {
  if (place.name.empty()) return refuse(say("Name the place."));
  const auto rows = work.all<Place>();
  const auto found =
      std::ranges::find_if(rows, [&](const auto& row) { return row.record.name == place.name; });
  const auto known = found == rows.end() ? std::nullopt : std::optional{found->record};
  int there = 0;
  for (const auto& level : work.shelf()) {
    if (level.place == place.name) there += level.quantity;
  }
  if (auto refusal = place_refusal(place, known, there); !refusal.empty()) {
    return refuse(std::move(refusal));
  }
  if (known) {
    work.put_instead(found->id, place);
  } else {
    work.put(place);
  }
  return Booked{};
}

}  // namespace sparewell::desk
