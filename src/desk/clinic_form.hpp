/// The clinic's details as they are typed.
#pragma once

#include <string>

#include "clinic/clinic.hpp"

namespace sparewell::desk {

struct ClinicForm {
  std::string name;
  std::string ship_to;
  std::string currency;
  std::string main_place;
  std::string service_target;       ///< in percent, "95" or "97.5"
  std::string records_begin;        ///< "2024-01-31", or empty when not stated
  std::string shortage_cost;        ///< "150.00", or empty when the service target decides
  std::string holding_percent;      ///< a year, of a piece's price
  std::string line_cost;            ///< "4.00", or empty
  std::string approval_above = {};  ///< "500.00" in the clinic's currency, or empty for no limit
  std::string billing_begins = {};  ///< "2024-01-31", or empty for the first service billed
  std::string papers_begin = {};    ///< likewise, or empty when papers lie elsewhere
};

[[nodiscard]] ClinicForm clinic_form(const ClinicSettings& settings);
/// Refuses, naming the field: a currency that is not three letters, an empty main place or one that
/// is a quarantine, a target that is not a number from 50 to 99.9, a day that is none, costs that
/// are no amounts.
[[nodiscard]] Expected<ClinicSettings> read_clinic_form(const ClinicForm& form);

}  // namespace sparewell::desk
