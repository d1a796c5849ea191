/// Movements of stock between places, booked: read what is there, decide (supply/), write. Each
/// function writes into a unit of work that the caller opens and commits; a refusal writes nothing.
/// All throw store::StoreFailure.
#pragma once

#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "store/port.hpp"
#include "supply/holding_back.hpp"
#include "supply/transfer.hpp"

namespace sparewell::desk {

/// What was written.
struct Booked {
  std::vector<StockMovement> movements;
  std::vector<std::string> notes;  ///< sentences for whoever booked it
  int number = 0;                  ///< of the loan or return, where there is one
};

/// Runs `book` on a unit of work of its own and commits it unless it refuses.
template <class Book>
Expected<Booked> in_one_work(store::Store& store, const store::Author& author, const Book& book) {
  const auto work = store.begin_write(author);
  Expected<Booked> booked = book(*work);
  if (booked) work->commit();
  return booked;
}

/// The item's stock and the places. Refuses an item that the catalogue does not have.
[[nodiscard]] Expected<supply::StockView> view_stock(const store::Snapshot& snapshot,
                                                     const ItemCode& item);
/// Writes what was decided.
void write_move(store::UnitOfWork& work, const supply::StockMove& move);

[[nodiscard]] Expected<Booked> book_transfer(store::UnitOfWork& work, const supply::Pieces& pieces,
                                             const std::string& to, supply::Travel travel,
                                             Date today, const std::string& reason);
[[nodiscard]] Expected<Booked> book_arrival(store::UnitOfWork& work, const supply::Arrival& arrival,
                                            Date today);
/// `to` is "" for the place "quarantine".
[[nodiscard]] Expected<Booked> book_quarantine(store::UnitOfWork& work,
                                               const supply::Pieces& pieces, const std::string& to,
                                               Date today, const std::string& reason);
/// `to` is "" for the clinic's main place.
[[nodiscard]] Expected<Booked> book_release(store::UnitOfWork& work, const supply::Pieces& pieces,
                                            const std::string& to, Date today,
                                            const std::string& reason);
[[nodiscard]] Expected<Booked> book_write_off(store::UnitOfWork& work, const supply::Pieces& pieces,
                                              supply::WriteOff why, Date today,
                                              const std::string& note);
/// Takes back everything that the unit of work `booking` moved. Refuses what was taken back
/// already, what has been moved on, and what wrote other records too: those are put right in their
/// own way.
[[nodiscard]] Expected<Booked> book_reversal(store::UnitOfWork& work, store::RowId booking,
                                             Date today, const std::string& reason);
/// Records a place, or gives a recorded one another sort while nothing lies there.
[[nodiscard]] Expected<Booked> book_place(store::UnitOfWork& work, const Place& place);

}  // namespace sparewell::desk
