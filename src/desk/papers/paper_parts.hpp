/// How papers for patients name their parts, sensitivities and clinic, in the patient's language.
#pragma once

#include <string>
#include <vector>

#include "care/chain.hpp"
#include "clinic/clinic.hpp"
#include "desk/papers/paper_language.hpp"
#include "exchange/documents/paper_size.hpp"
#include "exchange/documents/pictograms.hpp"

namespace sparewell::desk {

/// How a paper for a patient is written.
struct PatientPaper {
  std::vector<std::string> languages;  ///< their codes; English when there are none
  exchange::PaperSize paper = exchange::PaperSize::a4;
  bool names = true;  ///< the patient's name beside the reference
};

/// "locking liner", "liner con anclaje".
[[nodiscard]] std::string kind_on_paper(const PaperLanguage& language, const Item& item);
/// "locking liner, silicone, size 28, thread M10": what another workshop has to know of it. An item
/// that the catalogue does not have is named by its code alone.
[[nodiscard]] std::string part_on_paper(const PaperLanguage& language, const Item* item,
                                        const ItemCode& code);
/// "left", "izq.".
[[nodiscard]] std::string side_on_paper(const PaperLanguage& language, Side side);
/// "Left side".
[[nodiscard]] std::string side_heading_on_paper(const PaperLanguage& language, Side side);
/// "transtibial (below-knee) prosthesis, held by a pin".
[[nodiscard]] std::string prosthesis_on_paper(const PaperLanguage& language,
                                              const Prosthesis& worn);
[[nodiscard]] std::string function_on_paper(const PaperLanguage& language, care::Function function);
/// "lot A12, serial number 77"; "no lot recorded" when there is neither.
[[nodiscard]] std::string lot_on_paper(const PaperLanguage& language, const std::string& lot,
                                       const std::vector<std::string>& serials);
[[nodiscard]] exchange::Pictogram picture_of(const Item* item);

/// Units of one patient that are alike for a reader: of one item, lot, side and day.
struct PartsAlike {
  Side side = Side::left;
  ItemCode item;
  std::string lot;
  std::vector<std::string> serials;
  Date issued_on;
  std::vector<std::size_t> units;  ///< positions in Clinic::units
};
/// Those in use on the day, by side, kind and day of issue.
[[nodiscard]] std::vector<PartsAlike> parts_in_use(const Clinic& clinic, const ClinicIndex& index,
                                                   const PatientRef& patient, Date day);

/// What the patient reacts to and how that was found out, or that nothing is recorded.
[[nodiscard]] exchange::PicturedSection reactions_on_paper(const PaperLanguage& language,
                                                           const Clinic& clinic,
                                                           const PatientRef& patient);

/// "Patient: P-0012   Ana Field".
[[nodiscard]] std::string patient_on_paper(const PaperLanguage& language, const Patient& patient,
                                           bool name);
[[nodiscard]] std::string clinic_on_paper(const PaperLanguage& language,
                                          const ClinicSettings& settings);
/// The languages of a paper; English where none is named. Refuses one without a file.
[[nodiscard]] Expected<std::vector<const PaperLanguage*>> languages_of(const PatientPaper& paper);

}  // namespace sparewell::desk
