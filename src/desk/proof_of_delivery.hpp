/// The delivery sheet of parts handed over, and what is recorded of it.
#pragma once

#include <string>
#include <vector>

#include "desk/unit_ending.hpp"
#include "exchange/documents/delivery_sheet.hpp"

namespace sparewell::desk {

struct SheetOptions {
  bool names = true;  ///< the patient's name beside the reference
  exchange::PaperSize paper = exchange::PaperSize::a4;
};

/// What is to be printed for units of one patient; units alike in everything are one line.
[[nodiscard]] exchange::DeliverySheet delivery_sheet(const Clinic& clinic,
                                                     const std::vector<Unit>& units, Date today,
                                                     const SheetOptions& options);

/// Writes the sheet as PDF, then records that it was printed. Returns the number of pages.
[[nodiscard]] Expected<int> print_delivery_sheet(store::Store& store,
                                                 const std::vector<Unit>& units,
                                                 const std::string& path, Date today,
                                                 const SheetOptions& options,
                                                 const std::string& who);

/// Marks the patient's units that answer to `choice` and have no signed sheet as delivered: those
/// handed over by this program or, when an item is named, those imported too. Refuses when there
/// are none, when the day is after `today` or before an issue, and then nothing is marked.
[[nodiscard]] Expected<std::vector<Unit>> mark_delivered(store::Store& store,
                                                         const UnitChoice& choice, Date signed_on,
                                                         Date today, const std::string& who);

}  // namespace sparewell::desk
