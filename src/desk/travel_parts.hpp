/// What the check of one patient's trip and that of several share.
#pragma once

#include <span>
#include <vector>

#include "desk/travel.hpp"
#include "supply/lead_time.hpp"

namespace sparewell::desk {

/// The functions that the patient's suspensions need on the trip, with what may fail of each,
/// before spares are chosen; refusals as those of check_travel.
[[nodiscard]] Expected<TravelCheck> gather_travel(const Assessment& assessment,
                                                  const TravelRequest& request);

/// The unit cost of a spare of each; 1 for all, and true, where `by_pieces` is asked for or the
/// prices are missing or of several currencies.
bool set_travel_costs(std::span<TravelPart* const> parts, const ClinicIndex& index, bool by_pieces);

/// Takes the spares of the part from what is left on `shelf`, and says what is to be ordered.
void find_travel_spares(TravelPart& part, const TravelCheck& check, const Clinic& clinic,
                        std::vector<StockLevel>& shelf, const supply::LeadTimes& leads);

/// What stops so many spares of the part for this patient by the checks before an issue.
[[nodiscard]] std::vector<IssueFinding> what_stops_spares(const TravelPart& part, int quantity,
                                                          const TravelRequest& request,
                                                          const Clinic& clinic);

}  // namespace sparewell::desk
