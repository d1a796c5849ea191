#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<Sensitivity>& sensitivities_table() {
  static const Table<Sensitivity> table{
      .file = "sensitivities.csv",
      .columns = {name_column("patient_ref", Need::required, &Sensitivity::patient).key(),
                  name_column("substance", Need::required, &Sensitivity::substance).key(),
                  column("reaction", Need::optional, &Sensitivity::reaction, read_text),
                  column("established_by", Need::optional, &Sensitivity::established_by, read_text),
                  column("noted_on", Need::optional, &Sensitivity::noted_on, read_date).key()}};
  return table;
}

}  // namespace sparewell::exchange
