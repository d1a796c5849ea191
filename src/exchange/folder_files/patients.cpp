#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<Patient>& patients_table() {
  static const Table<Patient> table{
      .file = "patients.csv",
      .columns = {name_column("patient_ref", Need::required, &Patient::ref).key(),
                  column("given_name", Need::optional, &Patient::given_name, read_words),
                  column("family_name", Need::optional, &Patient::family_name, read_words),
                  column("birth_date", Need::optional, &Patient::birth_date, read_date),
                  column("next_visit", Need::optional, &Patient::next_visit, read_date),
                  name_column("place", Need::optional, &Patient::place),
                  name_column("payer", Need::optional, &Patient::payer),
                  name_column("member_id", Need::optional, &Patient::member_id)},
      .check = [](Patient& patient) -> std::optional<Fault> {
        if (patient.birth_date && patient.next_visit && *patient.next_visit < *patient.birth_date) {
          return Fault{"next_visit", say("{} is before the birth date; correct one of them",
                                         iso_text(*patient.next_visit))};
        }
        if (is_name_of_program(patient.place) || is_quarantine(patient.place)) {
          return Fault{"place", say("'{}' is no branch; write the store that serves the "
                                    "patient, or leave it empty for the main place",
                                    excerpt(patient.place))};
        }
        return std::nullopt;
      }};
  return table;
}

}  // namespace sparewell::exchange
