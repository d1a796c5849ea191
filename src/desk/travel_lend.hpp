/// Lending the spares for a trip that lie on the shelf.
#pragma once

#include <string>

#include "desk/stock_booking.hpp"
#include "desk/travel_team.hpp"

namespace sparewell::desk {

/// Lends what the check takes from the shelf to its patient until the last day of the trip, a loan
/// for each lot, in a unit of work that the caller opens and commits. Refuses, and then nothing is
/// to be committed, where a check stops a spare, and where none lies on the shelf. What is not on
/// the shelf is noted.
[[nodiscard]] Expected<Booked> lend_spares(store::UnitOfWork& work, const TravelCheck& check,
                                           Date today);
/// The same for several: shared spares are lent to the first who may need them.
[[nodiscard]] Expected<Booked> lend_spares(store::UnitOfWork& work, const TeamCheck& team,
                                           Date today);

/// "1 of LS10-24, lot A7, from main store; until 6 Jan 2027": to be confirmed; "" for nothing.
[[nodiscard]] std::string lending_words(const TravelCheck& check);
/// The same of several, each with the reference: "P-1 ...; P-2 ...".
[[nodiscard]] std::string lending_words(const TeamCheck& team);

}  // namespace sparewell::desk
