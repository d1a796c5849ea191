#include "desk/patient_place.hpp"

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

namespace {

/// Of the clinic what its stores are known from.
Clinic what_makes_stores(const store::Snapshot& snapshot) {
  Clinic clinic;
  clinic.settings = snapshot.settings();
  clinic.shelf = snapshot.shelf();
  for (auto& row : snapshot.all<Place>()) clinic.places.push_back(std::move(row.record));
  for (auto& row : snapshot.all<Patient>()) clinic.patients.push_back(std::move(row.record));
  for (auto& row : snapshot.all<Reservation>()) {
    clinic.reservations.push_back(std::move(row.record));
  }
  return clinic;
}

}  // namespace

std::string branch_words(const Branches& branches, const PatientRef& patient) {
  if (!branches.several()) return "";
  return say("Belongs to {}.", branches.names()[branches.of(patient)]);
}

Expected<Booked> book_patient_place(store::UnitOfWork& work, const PatientRef& patient,
                                    const std::string& place) {
  const auto row = work.patient(patient);
  if (!row) {
    return refuse(say("There is no patient '{}'; check the reference.", patient.text));
  }
  const Branches branches{what_makes_stores(work)};
  if (!place.empty() && !branches.position(place)) {
    return refuse(
        say("'{}' is not a store of the clinic ({}); correct the name, or record "
            "it as a place first.",
            place, list_words(branches.names())));
  }
  auto changed = row->record;
  changed.place = place;
  work.put_instead(row->id, changed);
  Booked made;
  made.notes.push_back(
      say("{} belongs to {}.", patient.text, place.empty() ? branches.names()[0] : place));
  return made;
}

StockForm patient_place_form(const Day& day, const PatientRef& patient) {
  const auto& branches = day.branches();
  StockForm form{said("Change place"), {}, {},
                 said("&Change"),      {}, to_say("a patient changed branch")};
  form.intro = say(
      "{} belongs to {}. What the patient will need is counted at the place to which they belong.",
      patient_words(day, patient), branches.names()[branches.of(patient)]);
  form.fields = {{said("&Belongs to"), branches.names()[branches.of(patient)],
                  said("A store; record a new one with Shelf, Places"), branches.names(), true}};
  form.book = [patient](store::UnitOfWork& work, const std::vector<std::string>& given) {
    return book_patient_place(work, patient, given[0]);
  };
  return form;
}

}  // namespace sparewell::desk
