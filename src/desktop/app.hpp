/// The program: its command line, its folders, and the last net under failures.
#pragma once

#include <memory>
#include <string>

#include <wx/app.h>

#include "clinic/date.hpp"

namespace sparewell::desktop {

class MainFrame;
class SelfReport;

class App : public wxApp {
 public:
  App();
  ~App() override;
  bool OnInit() override;
  void OnInitCmdLine(wxCmdLineParser& parser) override;
  bool OnCmdLineParsed(wxCmdLineParser& parser) override;
  bool OnExceptionInMainLoop() override;
  int OnExit() override;
  /// When the last window is gone, the program starts as it was started.
  void start_again() { again_ = true; }

 private:
  /// In the language of the command line, or as somebody chose the last time.
  void speak_as_remembered();

  Date today_;
  std::string path_;
  std::string language_;  ///< of the command line; "" for the remembered one
  bool again_ = false;
  std::string report_file_;             ///< "" without a report
  std::unique_ptr<SelfReport> report_;  ///< for tests
};

}  // namespace sparewell::desktop
