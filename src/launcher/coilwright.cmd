@echo off
rem Starts coilwright on Windows. Ends with what coilwright ends with, and with 2 or 3 and a line
rem where it cannot start. No block in parentheses: a folder such as "Program Files (x86)" would
rem close it, and the exit code would be taken before it is there.
setlocal EnableExtensions DisableDelayedExpansion
rem A variable of this name would be taken for the exit code.
set "ERRORLEVEL="
set "here=%~dp0"
if not exist "%here%coilwright.jar" goto incomplete
if not exist "%here%lib\" goto incomplete

rem Options that the machine gives to all Java programs are not heeded.
set "JAVA_TOOL_OPTIONS="
set "JDK_JAVA_OPTIONS="
set "_JAVA_OPTIONS="

rem Its own Java, that of JAVA_HOME (which some write with quotes), then all on the PATH, but none in
rem the folder where the user happens to stand: the first that is new enough.
set "java="
set "unfit="
set "candidate=%here%runtime\bin\java.exe"
call :look
if not defined JAVA_HOME goto path
set "candidate=%JAVA_HOME:"=%\bin\java.exe"
call :look
:path
if defined java goto found
for /f "delims=" %%J in ('%SystemRoot%\System32\where.exe $PATH:java.exe 2^>nul') do set "candidate=%%J" & call :look
if not defined java goto missing
:found

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
rem ended with Ctrl-C before it could say so itself
if "%code%"=="-1073741510" exit /b 130
>&2 echo coilwright: "%java%" could not start it. Nothing was judged.
exit /b 3

:incomplete
>&2 echo coilwright: "%here%coilwright.jar" or "%here%lib" is missing. Unpack it again.
exit /b 3

:missing
if defined unfit goto unfit
>&2 echo coilwright: needs Java 17 or later. Install it, or set JAVA_HOME to where it is.
exit /b 2

:unfit
>&2 echo coilwright: needs Java 17 or later. "%unfit%" is not. Install it, or set JAVA_HOME to where it is.
exit /b 2

rem Takes the candidate as the Java if there is none yet and it is Java 17 or later. The file "release"
rem beside it tells the version without starting it; where there is none, as beside a stand-in for
rem Java on the PATH, Java itself is asked.
:look
if defined java exit /b
if not exist "%candidate%" exit /b
set "unfit=%candidate%"
set "version="
for %%J in ("%candidate%") do set "home=%%~dpJ.."
if not exist "%home%\release" goto ask
for /f "usebackq tokens=1,2 delims==" %%K in ("%home%\release") do if "%%K"=="JAVA_VERSION" set "version=%%~L"
:ask
if defined version goto known
for /f "tokens=2,3" %%K in ('call "%candidate%" -version 2^>^&1') do if "%%K"=="version" set "version=%%~L"
if not defined version exit /b
:known
set "feature=%version%"
if "%feature:~0,2%"=="1." set "feature=%feature:~2%"
for /f "delims=.-+_ " %%F in ("%feature%") do set "feature=%%F"
if %feature% GEQ 17 set "java=%candidate%"
exit /b
