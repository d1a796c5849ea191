/// A file of claims or payments: what it holds, how a table is read, and taking it over.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "desk/billing/claim_files.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

/// Ends with wxID_OK when the file is to be taken over as request() says.
class ClaimFileDialog : public Form {
 public:
  /// Reads the file without writing anything.
  using Look = std::function<Expected<desk::BillingFileOutcome>(const desk::BillingFileRequest&)>;

  /// `saved` are the names of the mappings that the clinic keeps.
  ClaimFileDialog(wxWindow* parent, desk::BillingFileRequest request,
                  const std::vector<std::string>& saved, Look look);
  [[nodiscard]] const desk::BillingFileRequest& request() const { return request_; }

 private:
  void add_table_fields(const std::vector<std::string>& saved);
  void take_fields();
  void look();
  /// Fills the columns in where the headings suggest some and none are named.
  void tell_refusal(const std::string& sentence);

  desk::BillingFileRequest request_;
  Look look_;
  wxComboBox* mapping_ = nullptr;  ///< nullptr of an X12 file, as are the fields below
  wxTextCtrl* columns_ = nullptr;
  wxTextCtrl* dates_ = nullptr;
  wxChoice* decimal_ = nullptr;
  wxChoice* separator_ = nullptr;
  wxTextCtrl* save_as_ = nullptr;
  wxTextCtrl* told_ = nullptr;
};

}  // namespace sparewell::desktop
