/// The delivery sheet of parts handed over, and what is recorded of it.
#pragma once

#include <string>
#include <vector>

#include "desk/issued_parts.hpp"
#include "exchange/documents/delivery_sheet.hpp"

namespace sparewell::desk {

struct SheetOptions {
  bool names = true;  ///< the patient's name beside the reference
  exchange::PaperSize paper = exchange::PaperSize::a4;
};

/// What is to be printed for units of one patient; units alike in everything are one line. `remark`
/// stands below the heading.
[[nodiscard]] exchange::DeliverySheet delivery_sheet(const Clinic& clinic,
                                                     const std::vector<Unit>& units, Date today,
                                                     const SheetOptions& options,
                                                     const std::string& remark = {});

/// Writes the sheet as PDF, then records that it was printed. A sheet of parts that one was written
/// or signed of before says that it is a copy. Returns the number of pages.
[[nodiscard]] Expected<int> print_delivery_sheet(store::Store& store,
                                                 const std::vector<Unit>& units,
                                                 const std::string& path, Date today,
                                                 const SheetOptions& options,
                                                 const std::string& who);

/// The same for parts that were handed over earlier: those of issued_parts() with these numbers, or
/// all of them where none is given. Refuses when there are none, and parts of several days unless
/// they are numbered.
[[nodiscard]] Expected<int> print_sheet_again(store::Store& store, const UnitChoice& choice,
                                              const std::vector<int>& numbers,
                                              const std::string& path, Date today,
                                              const SheetOptions& options, const std::string& who);

/// Marks those of unsigned_parts() with these numbers, or all of them where none is given, as
/// delivered. Refuses when there are none, when the day is after `today` or before an issue, and
/// then nothing is marked.
[[nodiscard]] Expected<std::vector<Unit>> mark_delivered(store::Store& store,
                                                         const UnitChoice& choice,
                                                         const std::vector<int>& numbers,
                                                         Date signed_on, Date today,
                                                         const std::string& who);

}  // namespace sparewell::desk
