#include <wx/app.h>
#include <wx/msgdlg.h>

#include "clinic/say.hpp"
#include "desktop/app.hpp"
#include "desktop/dialogs/ways_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {

void MainFrame::choose_ways() {
  WaysDialog dialog{this, remembered_.ways};
  if (dialog.ShowModal() != wxID_OK || dialog.ways() == remembered_.ways) return;
  remembered_.ways = dialog.ways();
  desk::remember(remembered_, memory_);
  wxMessageDialog question{
      this, to_wx(said("Sparewell speaks and writes like that when it is started the next time.")),
      to_wx(said("Language and units")), wxYES_NO | wxICON_INFORMATION};
  question.SetYesNoLabels(to_wx(said("&Start it again now")), to_wx(said("&Later")));
  if (question.ShowModal() != wxID_YES) return;
  dynamic_cast<App&>(*wxTheApp).start_again();
  Close();
}

}  // namespace sparewell::desktop
