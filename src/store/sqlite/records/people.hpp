/// Columns of patients and of what is recorded about them.
#pragma once

#include "clinic/clinic.hpp"
#include "clinic/say.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<Patient> {
  static constexpr Subject subject{to_say("patient"), to_say("reference")};
  static constexpr const char* name = "patients";

  template <class Fields, class P>
  static void describe(Fields& f, P& patient) {
    f("ref", patient.ref.text);
    f("given_name", patient.given_name);
    f("family_name", patient.family_name);
    f("birth_date", patient.birth_date);
    f("next_visit", patient.next_visit);
    f("place", patient.place);
    f("payer", patient.payer);
    f("member_id", patient.member_id);
  }
};

template <>
struct Table<Prosthesis> {
  static constexpr Subject subject{to_say("prosthesis"),
                                   to_say("patient, side and day of delivery")};
  static constexpr const char* name = "prostheses";

  template <class Fields, class P>
  static void describe(Fields& f, P& prosthesis) {
    f.reference("patient_id", prosthesis.patient);
    f("side", prosthesis.side);
    f("level", prosthesis.level);
    f("suspension", prosthesis.suspension);
    f("stage", prosthesis.stage);
    f("delivered_on", prosthesis.delivered_on);
    f("ended_on", prosthesis.ended_on);
  }
};

template <>
struct Table<Usage> {
  static constexpr Subject subject{to_say("usage record"), to_say("patient and first day")};
  static constexpr const char* name = "usage";

  template <class Fields, class U>
  static void describe(Fields& f, U& usage) {
    f.reference("patient_id", usage.patient);
    f("from_date", usage.from_date);
    f("activity", usage.activity);
    f("kneeling_hours", usage.kneeling_hours);
    f("wear_hours", usage.wear_hours);
    f("sweating", usage.sweating);
    f("impact_sport", usage.impact_sport);
  }
};

template <>
struct Table<Sensitivity> {
  static constexpr Subject subject{to_say("sensitivity"), to_say("patient, substance and day")};
  static constexpr const char* name = "sensitivities";

  template <class Fields, class S>
  static void describe(Fields& f, S& sensitivity) {
    f.reference("patient_id", sensitivity.patient);
    f("substance", sensitivity.substance);
    f("reaction", sensitivity.reaction);
    f("established_by", sensitivity.established_by);
    f("noted_on", sensitivity.noted_on);
  }
};

template <>
struct Table<Measurement> {
  static constexpr Subject subject{to_say("measurement"), to_say("patient, side, day and height")};
  static constexpr const char* name = "measurements";

  template <class Fields, class M>
  static void describe(Fields& f, M& measurement) {
    f.reference("patient_id", measurement.patient);
    f("side", measurement.side);
    f("measured_on", measurement.measured_on);
    f("at_cm", measurement.at_cm);
    f("circumference_cm", measurement.circumference_cm);
  }
};

template <>
struct Table<Reaction> {
  static constexpr Subject subject{to_say("reaction"), to_say("patient, side and first day")};
  static constexpr const char* name = "reactions";

  template <class Fields, class R>
  static void describe(Fields& f, R& reaction) {
    f.reference("patient_id", reaction.patient);
    f("side", reaction.side);
    f("began_on", reaction.began_on);
    f("ended_on", reaction.ended_on);
    f("signs", reaction.signs);
    f("note", reaction.note);
  }
};

template <>
struct Table<Reservation> {
  static constexpr Subject subject{to_say("reservation"), to_say("patient, item, place and day")};
  static constexpr const char* name = "reservations";

  template <class Fields, class R>
  static void describe(Fields& f, R& reservation) {
    f.reference("patient_id", reservation.patient);
    f.reference("item_id", reservation.item);
    f("place", reservation.place);
    f("quantity", reservation.quantity);
    f("needed_on", reservation.needed_on);
  }
};

}  // namespace sparewell::store::sqlite
