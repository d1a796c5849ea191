/// The card that a patient takes along on a trip: one page in large print, with pictures.
#pragma once

#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/documents/paper_size.hpp"
#include "exchange/documents/pictograms.hpp"

namespace sparewell::exchange {

/// Everything in words of the card's language, as it is printed.
struct TravelCard {
  PicturedWords title;
  PicturedSection whose;   ///< the patient and the trip; without a heading
  PicturedSection reacts;  ///< sensitivities
  PicturedSection pack;
  std::vector<PicturedSection> worn;  ///< of each side, beside each other
  PicturedSection fails;              ///< what to do when a part fails
  PicturedSection care;               ///< washing and skin
  PicturedSection clinic;             ///< its address, and its telephone beside it
  std::string left_out;               ///< "And {} more; ask the clinic."
  std::vector<std::string> cautions;  ///< what the card does not replace, and from when it is
};

/// Writes a PDF with one page a card, and returns their number. What matters is printed in 14
/// points or more; what does not fit even so is counted on the card. Refuses with one sentence when
/// the file cannot be written, and then leaves none behind.
[[nodiscard]] Expected<int> write_travel_cards(const std::vector<TravelCard>& cards,
                                               PaperSize paper, const std::string& path);

}  // namespace sparewell::exchange
