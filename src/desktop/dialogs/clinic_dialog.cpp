#include "desktop/dialogs/clinic_dialog.hpp"

#include <wx/msgdlg.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/clinic_form.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {

ClinicDialog::ClinicDialog(wxWindow* parent, const ClinicSettings& settings)
    : Form{parent, said("Clinic details")}, settings_{settings} {
  const auto form = desk::clinic_form(settings);
  name_ = add_text(said("&Name"), form.name, said("As it stands on orders"));
  ship_to_ = add_text(said("&Deliver to"), form.ship_to,
                      said("Postal address, as it stands on orders"), 4);
  currency_ = add_text(said("C&urrency"), form.currency, said("Three letters, for example EUR"));
  main_place_ = add_text(said("&Main place"), form.main_place, said("Where orders are delivered"));
  target_ =
      add_text(said("&Service target, %"), form.service_target,
               said("Wanted chance of not running out of a stocked item, between 50 and 99.9"));
  records_begin_ = add_text(said("&Records begin"), form.records_begin,
                            said("Day such as 2024-01-31 from which every ended part is in the "
                                 "records; empty when all are"));
  shortage_cost_ = add_text(said("Cost of a missin&g piece"), form.shortage_cost,
                            said("Of the extra visit and the rush order; then costs decide how "
                                 "much to stock. Empty: the service target does"));
  holding_ = add_text(said("Keeping for a &year, %"), form.holding_percent,
                      said("Share of a piece's price that keeping it for a year costs"));
  line_cost_ = add_text(said("Cost of an order &line"), form.line_cost,
                        said("Of the work on one more line; empty: nothing worth counting"));
  approval_above_ =
      add_text(said("&Approval above"), form.approval_above,
               said("Orders of a larger sum need a named person's approval; empty when none do"));
  billing_begins_ = add_text(said("&Billing begins"), form.billing_begins,
                             said("Day such as 2024-01-31 from which what is handed out is "
                                  "compared with claims; empty: from the first service billed"));
  papers_begin_ = add_text(said("&Papers begin"), form.papers_begin,
                           said("Day from which orders, reasons and signed sheets are put on "
                                "record here; empty: they lie elsewhere"));
  finish(said("&Keep"));
  Bind(wxEVT_BUTTON, &ClinicDialog::on_ok, this, wxID_OK);
}

void ClinicDialog::on_ok(wxCommandEvent& event) {
  const auto read = desk::read_clinic_form(
      {from_wx(name_->GetValue()), from_wx(ship_to_->GetValue()), from_wx(currency_->GetValue()),
       from_wx(main_place_->GetValue()), from_wx(target_->GetValue()),
       from_wx(records_begin_->GetValue()), from_wx(shortage_cost_->GetValue()),
       from_wx(holding_->GetValue()), from_wx(line_cost_->GetValue()),
       from_wx(approval_above_->GetValue()), from_wx(billing_begins_->GetValue()),
       from_wx(papers_begin_->GetValue())});
  if (!read) {
    wxMessageBox(to_wx(read.error().sentence), said("Clinic details"), wxOK | wxICON_WARNING, this);
    return;
  }
  settings_ = *read;
  event.Skip();
}

}  // namespace sparewell::desktop
