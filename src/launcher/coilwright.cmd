@echo off
rem Starts coilwright on Windows. Ends with what coilwright ends with, and with 2 or 3 and a line
rem where it cannot start. No block in parentheses: a folder such as "Program Files (x86)" would
rem close it, and the exit code would be taken before it is there.
setlocal DisableDelayedExpansion
set "here=%~dp0"
if not exist "%here%coilwright.jar" goto incomplete
if not exist "%here%lib\" goto incomplete

rem Options that the machine gives to all Java programs are not heeded.
set "JAVA_TOOL_OPTIONS="
set "JDK_JAVA_OPTIONS="
set "_JAVA_OPTIONS="

set "java=%here%runtime\bin\java.exe"
if exist "%java%" goto found
if not defined JAVA_HOME goto path
set "java=%JAVA_HOME%\bin\java.exe"
if exist "%java%" goto found
:path
set "java="
for %%J in (java.exe) do set "java=%%~$PATH:J"
if not defined java goto missing

:found
rem The file "release" beside it tells the version without starting it; where there is none, as
rem beside a stand-in for Java on the PATH, Java itself is asked.
set "version="
for %%J in ("%java%") do set "home=%%~dpJ.."
if not exist "%home%\release" goto ask
for /f "usebackq tokens=2 delims==" %%V in (`findstr /b /c:"JAVA_VERSION=" "%home%\release"`) do set "version=%%~V"
:ask
if defined version goto known
for /f "tokens=3" %%V in ('call "%java%" -version 2^>^&1 ^| findstr /c:" version "') do set "version=%%~V"
if not defined version goto unfit
:known
set "feature=%version%"
if "%feature:~0,2%"=="1." set "feature=%feature:~2%"
for /f "delims=.-+_ " %%F in ("%feature%") do set "feature=%%F"
if %feature% LSS 17 goto unfit

rem From Java 19 on, Java keeps an archive of the classes that were needed, and makes it anew where
rem it does not fit.
set "archive="
set "keep="
if not defined LOCALAPPDATA goto start
if %feature% LSS 19 goto start
if not exist "%LOCALAPPDATA%\coilwright\" mkdir "%LOCALAPPDATA%\coilwright" 2>nul
set "archive=%LOCALAPPDATA%\coilwright\%version%.jsa"
set keep=-XX:+AutoCreateSharedArchive "-XX:SharedArchiveFile=%archive%"

:start
"%java%" %keep% -Xshare:auto -XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0 -Xlog:disable -XX:TieredStopAtLevel=1 -XX:+UseG1GC -XX:MaxNewSize=96m -XX:-UsePerfData -Xmx256m -XX:MaxMetaspaceSize=64m -XX:ReservedCodeCacheSize=32m -XX:MaxDirectMemorySize=8m -XX:ParallelGCThreads=2 -XX:ConcGCThreads=1 -Dfile.encoding=UTF-8 -Djava.awt.headless=true "-Dorg.coilwright.archive=%archive%" -Dorg.coilwright.findings=9 -cp "%here%coilwright.jar" org.coilwright.cli.Launch %*
set "code=%ERRORLEVEL%"
if "%code%"=="0" exit /b 0
if "%code%"=="2" exit /b 2
if "%code%"=="3" exit /b 3
if "%code%"=="9" exit /b 1
if "%code%"=="130" exit /b 130
>&2 echo coilwright: "%java%" could not start it. Nothing was judged.
exit /b 3

:incomplete
>&2 echo coilwright: "%here%coilwright.jar" or "%here%lib" is missing. Unpack it again.
exit /b 3

:missing
>&2 echo coilwright: needs Java 17 or later. Install it, or set JAVA_HOME to where it is.
exit /b 2

:unfit
>&2 echo coilwright: needs Java 17 or later. "%java%" is Java %version%.
exit /b 2
