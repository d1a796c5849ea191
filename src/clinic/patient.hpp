/// Patients and what is recorded about them over time.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

struct Patient {
  PatientRef ref;
  std::string given_name;   ///< never written to logs or to papers that leave the clinic
  std::string family_name;  ///< likewise
  std::optional<Date> birth_date;
  std::optional<Date> next_visit;
  /// The store of the branch that they belong to; "" for the clinic's main place.
  std::string place = {};
  std::string payer = {};      ///< who pays for their parts now; "" when not recorded
  std::string member_id = {};  ///< the payer's number for them; never written to logs

  friend bool operator==(const Patient&, const Patient&) = default;
};

struct Prosthesis {
  PatientRef patient;
  Side side = Side::left;
  Level level = Level::other;
  Suspension suspension = Suspension::pin;
  Stage stage = Stage::definitive;
  Date delivered_on;
  std::optional<Date> ended_on;

  friend bool operator==(const Prosthesis&, const Prosthesis&) = default;
};

/// How hard a patient uses their parts from a date on. An empty field says that nothing new is
/// known about it: the value before it stays in force.
struct Usage {
  PatientRef patient;
  Date from_date;
  std::optional<Activity> activity;
  std::optional<double> kneeling_hours;  ///< a day
  std::optional<double> wear_hours;      ///< a day
  std::optional<Sweating> sweating;
  std::optional<bool> impact_sport;

  friend bool operator==(const Usage&, const Usage&) = default;
};

struct Sensitivity {
  PatientRef patient;
  std::string substance;
  std::string reaction;
  std::string established_by;  ///< patch test, observed, reported
  std::optional<Date> noted_on;

  friend bool operator==(const Sensitivity&, const Sensitivity&) = default;
};

struct Measurement {
  PatientRef patient;
  Side side = Side::left;
  Date measured_on;
  double at_cm = 0;  ///< height above the distal end of the residual limb
  double circumference_cm = 0;

  friend bool operator==(const Measurement&, const Measurement&) = default;
};

}  // namespace sparewell
