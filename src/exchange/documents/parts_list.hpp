/// The list of the parts that a patient wears, to keep: what they are, how long, and their care.
#pragma once

#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/documents/paper_size.hpp"
#include "exchange/documents/pictograms.hpp"

namespace sparewell::exchange {

struct ListedPart {
  PicturedWords name;
  std::vector<std::string> details;  ///< a line each
};

struct PartsOfSide {
  std::string heading;
  std::vector<ListedPart> parts;
};

/// Everything in words of the list's language, as it is printed.
struct PartsList {
  std::string clinic_name;
  std::string clinic_address;  ///< lines separated by '\n'
  std::string title;
  std::string patient;
  std::string written_on;
  std::vector<std::string> explained;  ///< how the dates are meant; that nothing is recorded
  std::vector<PartsOfSide> sides;
  PicturedSection sensitivities;
  std::vector<PicturedSection> care;
  PicturedSection cautions;
  std::string page_numbers;  ///< "Page {} of {}"
};

/// Writes a PDF with one list after the other, each on pages of its own, and returns the number of
/// pages. Refuses with one sentence when the file cannot be written, and then leaves none behind.
[[nodiscard]] Expected<int> write_parts_lists(const std::vector<PartsList>& lists, PaperSize paper,
                                              const std::string& path);

}  // namespace sparewell::exchange
