/// The sheet that a patient signs for the parts handed over: proof of delivery.
#pragma once

#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/documents/paper_size.hpp"

namespace sparewell::exchange {

/// Parts alike in everything stand in one line with their number.
struct DeliveredLine {
  std::string description;
  std::string side;
  std::string size;
  std::string lot;
  std::string serial;
  int quantity = 1;
  std::string date;
};

/// Everything in words, as it is printed.
struct DeliverySheet {
  std::string clinic_name;
  std::string clinic_address;  ///< lines separated by '\n'
  std::string patient_ref;
  std::string patient_name;  ///< "" leaves it out
  std::string written_on;
  std::string remark;  ///< stands below the heading, such as that this is a copy; "" for none
  std::vector<DeliveredLine> lines;
  std::vector<std::string> cautions;  ///< one sentence or two each
  std::string judgement;              ///< what the sheet does not replace
  PaperSize paper = PaperSize::a4;
};

/// Writes a PDF and returns the number of its pages. Long texts wrap; lines that do not fit go to
/// further pages. Letters of any script are printed when the machine has a font for them. Refuses
/// with one sentence when the file cannot be written, and then leaves none behind.
[[nodiscard]] Expected<int> write_delivery_sheet(const DeliverySheet& sheet,
                                                 const std::string& path);

}  // namespace sparewell::exchange
