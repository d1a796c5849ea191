#include "desktop/dialogs/help_dialogs.hpp"

#include <fmt/format.h>
#include <wx/msgdlg.h>

#include "clinic/say.hpp"
#include "desk/commands.hpp"
#include "desk/patient_card.hpp"
#include "desktop/dialogs/form.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {
namespace {

desk::Table key_table() {
  desk::Table table{{{said("Key"), 42, desk::Align::left, ""},
                     {said("What it does"), 46, desk::Align::left, ""}}};
  std::vector<desk::TableRow> rows;
  for (const auto& line : desk::key_list()) {
    rows.push_back(
        {line.key, {{line.key, std::nullopt}, {line.meaning, std::nullopt}}, "", 0, false});
  }
  table.fill(std::move(rows));
  return table;
}

class KeysDialog : public Form {
 public:
  explicit KeysDialog(wxWindow* parent) : Form{parent, said("Keys")}, table_{key_table()} {
    auto* view = new TableView{this, table_, said("Keys")};
    view->set_least_rows(18);
    view->SetMinSize({FromDIP(680), -1});
    add_wide(view, 1);
    view->table_changed();
    finish(said("&Close"), false);
  }

 private:
  desk::Table table_;
};

}  // namespace

void show_keys(wxWindow* parent) {
  KeysDialog{parent}.ShowModal();
}

void show_about(wxWindow* parent) {
  wxMessageBox(
      to_wx(fmt::format(
          "Sparewell {}\n\n{}\n\n{} {}", SPAREWELL_VERSION,
          said("Keeps the parts that hold a limb prosthesis on, from the order to the patient: how "
               "long each will last, and what to order when."),
          desk::care_caution(),
          said("What is not recorded is not known: it is never taken as safe."))),
      said("About Sparewell"), wxOK | wxICON_INFORMATION, parent);
}

}  // namespace sparewell::desktop
