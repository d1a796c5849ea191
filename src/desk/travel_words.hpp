/// What a check before a trip says.
#pragma once

#include <string>
#include <vector>

#include "desk/travel.hpp"

namespace sparewell::desk {

/// "95.2 %", "over 99.9 %": never rounded up to certainty.
[[nodiscard]] std::string assurance_words(double chance);

/// Whether the suspension lasts as it is and with what is to be packed: one or two sentences.
[[nodiscard]] std::string travel_verdict(const TravelCheck& check);

/// A function with its chances, what to pack of it, and where that comes from.
/// `with_one_less` tells what one spare less would mean for the patient's trip.
[[nodiscard]] std::string travel_part_words(const TravelCheck& check, std::size_t part, Date today,
                                            bool with_one_less = true);

/// Where the spares of a part come from: " Take 1 of lot A from main store."; "" without spares.
[[nodiscard]] std::string travel_source_words(const TravelPart& part, Date today);

/// A sentence for each function of which nothing is known.
[[nodiscard]] std::vector<std::string> travel_gaps(const TravelCheck& check);

/// What the chances leave out, and the cautions.
[[nodiscard]] std::vector<std::string> travel_cautions(const TravelRequest& request = {});

/// What to mind where the prosthesis gets wet, by the kinds and materials that are along; none when
/// it does not.
[[nodiscard]] std::vector<std::string> water_cautions(const TravelCheck& check);

/// "there another can be had in 5 days"; "" where none can.
[[nodiscard]] std::string resupply_words(const TravelRequest& request);

}  // namespace sparewell::desk
