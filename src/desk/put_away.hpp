/// For whom the pieces of a delivery are put away.
#pragma once

#include "desk/receiving.hpp"

namespace sparewell::desk {

/// Keeps the sound pieces that came as reservations of the patients whom they were ordered for, the
/// earliest need first, and notes in `outcome` who got one and who still waits. What is reserved
/// for the patient already, because a visit was booked before or after the order, is not reserved a
/// second time. Pieces in quarantine are nobody's.
void put_away_for_patients(store::UnitOfWork& work, ReceivingOutcome& outcome);

/// A line of which nothing counts as received, although something came, is on back-order; lines
/// that came in part are so by themselves.
void leave_on_back_order(store::UnitOfWork& work, const ReceivingOutcome& outcome);

}  // namespace sparewell::desk
